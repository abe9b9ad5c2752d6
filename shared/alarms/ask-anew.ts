// An alarm that asks for somebody: when it begins to, and when an acknowledgement does not hold any longer.
import { HOUR_MS, MINUTE_MS } from '../units.ts';
import type { Alarm, Asking, Priority } from './alarm.ts';
import { nextState } from './life-cycle.ts';
import type { ChamberWatch, Effect, Reduction, WatchEntry } from './watch-state.ts';

/** What an alarm is given when it begins to ask: nobody has it, whoever had it before. */
export function askNow(
  nowMs: number,
  kind: Asking['kind'],
): Pick<Alarm, 'asking' | 'acknowledgedMs' | 'acknowledgedBy'> {
  return { asking: { sinceMs: nowMs, kind }, acknowledgedMs: null, acknowledgedBy: null };
}

/** Ours: how long somebody may have an alarm whose condition stands before it asks anew. The others wait for their end. */
const heldForMs: Partial<Record<Priority, number>> = { critical: 30 * MINUTE_MS, high: 2 * HOUR_MS };

/** A clock may be set back a little at any time; by more than this, times that lie ahead mean nothing any more. */
const AHEAD_AT_MOST_MS = MINUTE_MS;

/** Asks anew for every alarm whose acknowledgement has run out, and where the clock was set back behind what the alarm remembers. */
export function expireAcknowledgements(state: ChamberWatch, nowMs: number): Reduction {
  let { entries } = state;
  const effects: Effect[] = [];
  for (const [key, before] of Object.entries(state.entries)) {
    const { alarm } = before;
    if (alarm === null || !isToAskAnew(alarm, nowMs)) continue;
    const changed: Alarm = {
      ...alarm,
      state: nextState(alarm.state, 'ask-anew', true),
      ...askNow(nowMs, 'asked-anew'),
    };
    const entry: WatchEntry = { ...before, alarm: changed };
    entries = { ...entries, [key]: entry };
    effects.push(effectOf(changed, alarm, nowMs), { type: 'entry-changed', key, entry });
  }
  return effects.length === 0 ? { state, effects } : { state: { ...state, entries }, effects };
}

function isToAskAnew({ state, priority, acknowledgedMs, asking }: Alarm, nowMs: number): boolean {
  const liesAhead = (ms: number | undefined) => ms !== undefined && ms > nowMs + AHEAD_AT_MOST_MS;
  if (state === 'unacknowledged') return liesAhead(asking?.sinceMs);
  if (state !== 'acknowledged' || acknowledgedMs === null) return false;
  const heldMs = heldForMs[priority];
  return heldMs !== undefined && (nowMs - acknowledgedMs >= heldMs || liesAhead(acknowledgedMs));
}

function effectOf(alarm: Alarm, { state, acknowledgedBy }: Alarm, atMs: number): Effect {
  const note = acknowledgedBy === null ? 'the clock was set back' : `${acknowledgedBy} had it`;
  return { type: 'alarm-changed', change: 'asked-anew', atMs, from: state, alarm, person: null, note };
}
