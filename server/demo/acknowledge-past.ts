// Who of the invented crew took the alarms of the past: each one some minutes after it came.
import type { AlarmState } from '../../shared/alarms/alarm.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import type { Decision } from '../watch/decision.ts';
import type { StoredNursery } from './store-nursery.ts';

export interface Acknowledgement {
  readonly chamberId: string;
  readonly alarmId: string;
  readonly person: string;
  readonly atMs: number;
}

export interface Acknowledging {
  /** Remembers what a decision raised; answers the acknowledgements that have come due by `nowMs`. */
  due(decision: Decision, nowMs: number): Acknowledgement[];
}

const TAKEN_AFTER_MS = 4 * MINUTE_MS;
const untaken: readonly AlarmState[] = ['unacknowledged', 'returned-unacknowledged'];

/** The crew of the nursery, taking turns. */
export function createAcknowledging({ nursery }: StoredNursery): Acknowledging {
  const crew = nursery.people.filter(({ role }) => role === 'crew').map(({ name }) => name);
  const open = new Map<string, Acknowledgement>();
  let turns = 0;
  return {
    due({ work }, nowMs) {
      for (const { alarm } of work.changes) {
        if (!untaken.includes(alarm.state)) open.delete(alarm.id);
        else if (!open.has(alarm.id)) {
          const person = crew[turns++ % crew.length] ?? '';
          const atMs = nowMs + TAKEN_AFTER_MS;
          open.set(alarm.id, { chamberId: alarm.chamberId, alarmId: alarm.id, person, atMs });
        }
      }
      const now = [...open.values()].filter(({ atMs }) => atMs <= nowMs);
      for (const { alarmId } of now) open.delete(alarmId);
      return now;
    },
  };
}
