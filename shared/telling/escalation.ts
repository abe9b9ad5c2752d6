// How long an alarm waits for somebody before it is passed on, and when it is repeated. All numbers are ours; the manager sets the first four.
import type { Alarm, Priority } from '../alarms/alarm.ts';
import { HOUR_MS, MINUTE_MS } from '../units.ts';

/** Minutes since the alarm began to ask; they rise. `repeatMinutes` is the time between two repeats. */
export interface Escalation {
  readonly nextAfterMinutes: number;
  readonly everyoneAfterMinutes: number;
  readonly sirenAfterMinutes: number;
  readonly repeatMinutes: number;
}

/** Ours: five minutes to find the phone, a quarter of an hour until everybody knows, five more for the siren. */
export const standardEscalation: Escalation = {
  nextAfterMinutes: 5,
  everyoneAfterMinutes: 15,
  sirenAfterMinutes: 20,
  repeatMinutes: 10,
};

/** What an alarm stands for while it is asked, from its own record; one stored by an older version asks since it was announced. */
export function askingOf({ asking, occurredMs }: Alarm): NonNullable<Alarm['asking']> {
  return asking ?? { sinceMs: occurredMs, kind: 'raised' };
}

/** Priorities that are passed on, repeated, and sound the siren; the others are told once. */
export function isPressing(priority: Priority): boolean {
  return priority === 'critical' || priority === 'high';
}

const SLOWER_AFTER_MS = 2 * HOUR_MS;
const SLOW_MS = HOUR_MS;

/** When the newest repeat was due, ms after the waiting began, for one that has lasted so long; null = none yet. */
export function repeatDueMs(elapsedMs: number, { repeatMinutes }: Escalation): number | null {
  const everyMs = repeatMinutes * MINUTE_MS;
  const quickMs = Math.floor(Math.min(elapsedMs, SLOWER_AFTER_MS) / everyMs) * everyMs;
  const slowMs = Math.max(everyMs, SLOW_MS);
  const dueMs = elapsedMs < SLOWER_AFTER_MS ? quickMs : quickMs + Math.floor((elapsedMs - quickMs) / slowMs) * slowMs;
  return dueMs === 0 ? null : dueMs;
}

/** True when nobody has taken the alarm for so long that the siren is to sound. */
export function asksForSiren({ state, priority }: Alarm, { sirenAfterMinutes }: Escalation, waitedMs: number): boolean {
  return state === 'unacknowledged' && isPressing(priority) && waitedMs >= sirenAfterMinutes * MINUTE_MS;
}
