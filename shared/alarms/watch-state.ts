// What the watch remembers of one chamber, what may happen to it, and what it answers. Plain JSON throughout: it survives a restart.

import type { Alarm, AlarmAbout, AlarmState, RuleId } from './alarm.ts';
import { calmMemory, type DebounceMemory } from './debounce.ts';
import type { PlaceScene, Scene } from './rules/rule.ts';
import type { WhyNothing } from './why-nothing.ts';

/** A rule in a chamber, or a rule about one probe or check of it: `heat`, `silent-probe:p3`, `check-failed:erect`. */
export type WatchKey = string;

/** The value furthest from its limit, and when it was seen. */
export interface Worst {
  readonly value: number;
  readonly atMs: number;
}

/** What an alarm of a rule is about; a rule about the whole chamber has neither. */
export interface Subject {
  readonly probeId: string | null;
  readonly about?: AlarmAbout;
}

/** A rule that a person took out of service in a chamber. */
export interface OutOfService {
  readonly person: string;
  readonly atMs: number;
  readonly reason: string;
}

export interface WatchEntry extends Subject {
  readonly rule: RuleId;
  readonly memory: DebounceMemory;
  /** The worst value since the condition was first seen, while its on-delay runs: the peak counts from the beginning. */
  readonly pending: Worst | null;
  /** The occurrence that is not yet back to normal. */
  readonly alarm: Alarm | null;
  /** Only in the entry of the rule itself, the one without a subject; it holds for all subjects. */
  readonly outOfService?: OutOfService;
}

export interface ChamberWatch {
  readonly chamberId: string;
  readonly entries: Readonly<Record<WatchKey, WatchEntry>>;
}

export type WatchEvent<S extends PlaceScene = Scene> =
  | { readonly type: 'observe'; readonly scene: S }
  | { readonly type: 'acknowledge'; readonly alarmId: string; readonly person: string; readonly nowMs: number }
  | {
      readonly type: 'shelve';
      readonly alarmId: string;
      readonly person: string;
      readonly nowMs: number;
      readonly untilMs: number;
      readonly reason: string;
    }
  | { readonly type: 'unshelve'; readonly alarmId: string; readonly person: string | null; readonly nowMs: number }
  | {
      readonly type: 'take-out-of-service';
      readonly rule: RuleId;
      readonly person: string;
      readonly nowMs: number;
      readonly reason: string;
    }
  | { readonly type: 'return-to-service'; readonly rule: RuleId; readonly person: string; readonly nowMs: number };

export type AlarmChange =
  | 'occurred'
  | 'occurred-again'
  | 'escalated'
  | 'eased'
  | 'peaked'
  | 'acknowledged'
  /** Its acknowledgement has run out while the condition stands. */
  | 'asked-anew'
  | 'returned'
  /** Pointless, now that another stands; gone without asking anybody for anything. */
  | 'suppressed'
  /** Over with its batch, after it had returned. */
  | 'ended'
  | 'shelved'
  | 'unshelved'
  | 'suppressed'
  | 'unsuppressed'
  | 'taken-out-of-service'
  | 'returned-to-service';

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
  | { readonly type: 'nothing'; readonly reason: WhyNothing };

export interface Reduction {
  readonly state: ChamberWatch;
  readonly effects: readonly Effect[];
}

export function keyOf(rule: RuleId, subjectId: string | null): WatchKey {
  return subjectId === null ? rule : `${rule}:${subjectId}`;
}

/** What tells one alarm of a rule from another in the same chamber; null = there is only one. */
export function subjectIdOf({ probeId, about }: Subject): string | null {
  return probeId ?? about?.id ?? null;
}

/** A rule that has seen nothing yet. */
export function calmEntry(rule: RuleId, { probeId, about }: Subject): WatchEntry {
  const subject = about === undefined ? { probeId } : { probeId, about };
  return { rule, ...subject, memory: calmMemory, pending: null, alarm: null };
}

/** Who took a rule out of service, when and why; null = it serves. */
export function outOfServiceOf(state: ChamberWatch, rule: RuleId): OutOfService | null {
  return state.entries[keyOf(rule, null)]?.outOfService ?? null;
}

/** True when nothing stands, nothing is pending and no alarm is left: what most judgements of most rules meet. */
export function isCalm({ memory: { stands, turningSinceMs }, pending, alarm }: WatchEntry): boolean {
  const isStill = !stands[0] && !stands[1] && turningSinceMs[0] === null && turningSinceMs[1] === null;
  return isStill && pending === null && alarm === null;
}

export function emptyWatch(chamberId: string): ChamberWatch {
  return { chamberId, entries: {} };
}
