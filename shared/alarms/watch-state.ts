// What the watch remembers of one chamber, what may happen to it, and what it answers. Plain JSON throughout: it survives a restart.
import type { Alarm, AlarmState, Level, RuleId } from './alarm.ts';
import type { DebounceMemory } from './debounce.ts';
import type { Scene } from './rules/rule.ts';

/** A rule in a chamber, or a rule about one probe of it: `heat`, `silent-probe:p3`. */
export type WatchKey = string;

export interface WatchEntry {
  readonly rule: RuleId;
  readonly probeId: string | null;
  readonly memory: DebounceMemory;
  /** The occurrence that is not yet back to normal. */
  readonly alarm: Alarm | null;
}

export interface ChamberWatch {
  readonly chamberId: string;
  readonly entries: Readonly<Record<WatchKey, WatchEntry>>;
}

export type WatchEvent =
  | { readonly type: 'observe'; readonly scene: Scene }
  | { readonly type: 'acknowledge'; readonly alarmId: string; readonly person: string; readonly nowMs: number }
  | {
      readonly type: 'shelve';
      readonly alarmId: string;
      readonly person: string;
      readonly nowMs: number;
      readonly untilMs: number;
      readonly reason: string;
    }
  | { readonly type: 'unshelve'; readonly alarmId: string; readonly person: string | null; readonly nowMs: number };

export type AlarmChange =
  | 'occurred'
  | 'occurred-again'
  | 'escalated'
  | 'eased'
  | 'peaked'
  | 'acknowledged'
  | 'returned'
  | 'shelved'
  | 'unshelved';

export type Effect =
  | {
      readonly type: 'alarm-changed';
      readonly change: AlarmChange;
      readonly atMs: number;
      readonly from: AlarmState;
      readonly alarm: Alarm;
      /** Who did it; null = the watch itself. */
      readonly person: string | null;
      readonly note: string;
    }
  | { readonly type: 'entry-changed'; readonly key: WatchKey; readonly entry: WatchEntry }
  | { readonly type: 'nothing'; readonly reason: string };

export interface Reduction {
  readonly state: ChamberWatch;
  readonly effects: readonly Effect[];
}

export function keyOf(rule: RuleId, probeId: string | null): WatchKey {
  return probeId === null ? rule : `${rule}:${probeId}`;
}

export function emptyWatch(chamberId: string): ChamberWatch {
  return { chamberId, entries: {} };
}

/** True while the condition of an occurrence stands. */
export function conditionStands(level: Level): boolean {
  return level > 0;
}
