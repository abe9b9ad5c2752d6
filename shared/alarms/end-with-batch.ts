// A batch that leaves the chamber takes its alarms with it: there is nothing left to protect, and the next batch must find none of them.
import type { Alarm } from './alarm.ts';
import { standingLevel } from './debounce.ts';
import { nextState } from './life-cycle.ts';
import type { Scene } from './rules/rule.ts';
import { type ChamberWatch, calmEntry, type Effect, type Reduction } from './watch-state.ts';

/** Ends every alarm of another batch than the one in the scene, at once and whatever its state; who had not acknowledged it stays on record. */
export function endWithBatch(state: ChamberWatch, { batchId, nowMs }: Pick<Scene, 'batchId' | 'nowMs'>): Reduction {
  let { entries } = state;
  const effects: Effect[] = [];
  for (const [key, before] of Object.entries(state.entries)) {
    const { rule, memory, alarm, outOfService } = before;
    if (alarm === null || alarm.batchId === batchId) continue;
    const entry = { ...calmEntry(rule, before), ...(outOfService !== undefined && { outOfService }) };
    entries = { ...entries, [key]: entry };
    effects.push(endOf(alarm, standingLevel(memory) > 0, nowMs), { type: 'entry-changed', key, entry });
  }
  return effects.length === 0 ? { state, effects } : { state: { ...state, entries }, effects };
}

function endOf(alarm: Alarm, stood: boolean, nowMs: number): Effect {
  const over = {
    level: 0,
    returnedMs: stood ? nowMs : alarm.returnedMs,
    shelvedUntilMs: null,
    shelvedReason: null,
  } as const;
  return {
    type: 'alarm-changed',
    change: stood ? 'returned' : 'ended',
    atMs: nowMs,
    from: alarm.state,
    alarm: { ...alarm, ...over, state: outOfUse(alarm.state) },
    person: null,
    note: 'the batch is over',
  };
}

// An emptied chamber is out of service; an alarm that leaves that with its condition gone is normal (IEC 62682).
function outOfUse(state: Alarm['state']): Alarm['state'] {
  return nextState(nextState(state, 'take-out-of-service', false), 'return-to-service', false);
}
