// Alarms that another makes pointless: while that one stands they are suppressed by design (IEC 62682), and what they said is over.
import type { Alarm } from './alarm.ts';
import { standingLevel } from './debounce.ts';
import { nextState } from './life-cycle.ts';
import type { RuleTraits } from './rules/rule.ts';
import { type ChamberWatch, calmEntry, type Effect, keyOf, type Reduction } from './watch-state.ts';

/** True while the rule that makes this one pointless stands. */
export function isOverruled(state: ChamberWatch, { suppressedBy }: RuleTraits): boolean {
  const entry = suppressedBy === undefined ? undefined : state.entries[keyOf(suppressedBy, null)];
  return entry !== undefined && standingLevel(entry.memory) > 0;
}

/** Calms every suppressed rule: its alarm leaves without asking anybody for anything; one on the shelf stays there until that runs out. */
export function calmOverruled(state: ChamberWatch, rules: readonly RuleTraits[], nowMs: number): Reduction {
  let { entries } = state;
  const effects: Effect[] = [];
  for (const rule of rules) {
    if (rule.suppressedBy === undefined) continue;
    const key = keyOf(rule.id, null);
    const entry = state.entries[key];
    if (entry === undefined || standingLevel(entry.memory) === 0 || !isOverruled(state, rule)) continue;
    const alarm = entry.alarm === null ? null : suppressed(entry.alarm, nowMs);
    const next = { ...calmEntry(rule.id, { probeId: null }), alarm: alarm?.state === 'normal' ? null : alarm };
    entries = { ...entries, [key]: next };
    if (alarm !== null) effects.push(effectOf(alarm, entry.alarm?.state ?? 'normal', nowMs));
    effects.push({ type: 'entry-changed', key, entry: next });
  }
  return { state: effects.length === 0 ? state : { ...state, entries }, effects };
}

function suppressed(alarm: Alarm, nowMs: number): Alarm {
  const state = nextState(nextState(alarm.state, 'suppress', false), 'unsuppress', false);
  return { ...alarm, state, level: 0, returnedMs: nowMs };
}

function effectOf(alarm: Alarm, from: Alarm['state'], atMs: number): Effect {
  return { type: 'alarm-changed', change: 'suppressed', atMs, from, alarm, person: null, note: '' };
}
