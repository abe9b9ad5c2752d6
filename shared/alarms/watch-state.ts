// What the watch remembers of one chamber, what may happen to it, and what it answers. Plain JSON throughout: it survives a restart.
import type { Alarm, AlarmState, RuleId } from './alarm.ts';
import { calmMemory, type DebounceMemory } from './debounce.ts';
import type { Scene } from './rules/rule.ts';

/** A rule in a chamber, or a rule about one probe of it: `heat`, `silent-probe:p3`. */
export type WatchKey = string;

/** The value furthest from its limit, and when it was seen. */
export interface Worst {
  readonly value: number;
  readonly atMs: number;
}

export interface WatchEntry {
  readonly rule: RuleId;
  readonly probeId: string | null;
  readonly memory: DebounceMemory;
  /** The worst value since the condition was first seen, while its on-delay runs: the peak counts from the beginning. */
  readonly pending: Worst | null;
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
  /** Pointless, now that another stands; gone without asking anybody for anything. */
  | 'suppressed'
  /** Over with its batch, after it had returned. */
  | 'ended'
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

/** A rule that has seen nothing yet. */
export function calmEntry(rule: RuleId, probeId: string | null): WatchEntry {
  return { rule, probeId, memory: calmMemory, pending: null, alarm: null };
}

/** True when nothing stands, nothing is pending and no alarm is left: what most judgements of most rules meet. */
export function isCalm({ memory: { stands, turningSinceMs }, pending, alarm }: WatchEntry): boolean {
  const isStill = !stands[0] && !stands[1] && turningSinceMs[0] === null && turningSinceMs[1] === null;
  return isStill && pending === null && alarm === null;
}

export function emptyWatch(chamberId: string): ChamberWatch {
  return { chamberId, entries: {} };
}
