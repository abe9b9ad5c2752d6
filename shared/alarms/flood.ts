// Alarm floods after IEC 62682: more alarms at once than people can take in. It counts; what is told instead is for telling-due.ts.
import { MINUTE_MS } from '../units.ts';
import type { Alarm } from './alarm.ts';
import type { AlarmChange } from './watch-state.ts';

/** Numbers of IEC 62682 / ISA-18.2: a flood begins above 10 new alarms in 10 minutes and ends below 5. */
const WINDOW_MS = 10 * MINUTE_MS;
const BEGINS_ABOVE = 10;
const ENDS_BELOW = 5;

/** Plain JSON, made anew from stored alarms by `foldFlood`. */
export interface FloodState {
  /** New alarms of the last ten minutes, oldest first. */
  readonly recentMs: readonly number[];
  readonly isFlood: boolean;
}

export interface FloodStep {
  readonly state: FloodState;
  /** True for the alarms of this step. */
  readonly isFlood: boolean;
  /** The flood begins with this step. */
  readonly begins: boolean;
}

/** True for a change that counts towards a flood: a new alarm of a priority that is told. */
export function countsForFlood({ change, alarm }: { change: AlarmChange; alarm: Alarm }): boolean {
  return change === 'occurred' && alarm.priority !== 'low';
}

export const noAlarms: FloodState = { recentMs: [], isFlood: false };

/** Takes the new alarms of one turn together: a flood that comes in one turn is told in one. `newMs` in order, none older than before. */
export function stepFlood(before: FloodState, newMs: readonly number[]): FloodStep {
  const [atMs] = newMs;
  if (atMs === undefined) return { state: before, isFlood: before.isFlood, begins: false };
  const still = before.recentMs.filter((ms) => atMs - ms < WINDOW_MS);
  const wasFlood = before.isFlood && still.length >= ENDS_BELOW;
  const recentMs = [...still, ...newMs];
  const isFlood = wasFlood || recentMs.length > BEGINS_ABOVE;
  return { state: { recentMs, isFlood }, isFlood, begins: isFlood && !wasFlood };
}

/** The state after these alarms, given by their times in order. */
export function foldFlood(timesMs: readonly number[]): FloodState {
  return timesMs.reduce<FloodState>((state, ms) => stepFlood(state, [ms]).state, noAlarms);
}

/** The floods in a series of alarms, each from the alarm that filled the measure to the moment at which fewer than five are in the window. */
export function floodSpans(timesMs: readonly number[]): { fromMs: number; toMs: number }[] {
  const spans: { fromMs: number; toMs: number }[] = [];
  let state = noAlarms;
  for (const ms of timesMs) {
    const step = stepFlood(state, [ms]);
    if (step.begins) spans.push({ fromMs: ms, toMs: ms });
    const last = spans.at(-1);
    if (step.isFlood && last !== undefined) last.toMs = calmMs(step.state);
    state = step.state;
  }
  return spans;
}

/** When a flood ends if nothing more comes: the fifth newest alarm leaves the window. */
function calmMs({ recentMs }: FloodState): number {
  return (recentMs.at(-ENDS_BELOW) ?? 0) + WINDOW_MS;
}
