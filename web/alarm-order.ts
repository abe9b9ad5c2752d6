// Which alarm is worse, and which one stands for its chamber. Pure.
import type { AlarmView } from '../shared/api/alarms.ts';
import type { ChamberView } from '../shared/api/chambers.ts';

/** True while somebody still has to acknowledge it. */
export function isOpen(alarm: AlarmView): boolean {
  return alarm.state === 'unacknowledged' || alarm.state === 'returned-unacknowledged';
}

/** True for alarms that were put aside on purpose. */
export function isQuiet(alarm: AlarmView): boolean {
  return alarm.state === 'shelved' || alarm.state === 'suppressed' || alarm.state === 'out-of-service';
}

const stateRank = { unacknowledged: 0, acknowledged: 8, 'returned-unacknowledged': 4 } as const;
const priorityRank = { critical: 0, high: 1, medium: 2, low: 3 } as const;

/** Worst first: what nobody has acknowledged before what somebody has, then by priority. */
export function alarmRank(alarm: AlarmView): number {
  const state = alarm.state in stateRank ? stateRank[alarm.state as keyof typeof stateRank] : 20;
  return state + priorityRank[alarm.priority];
}

/** True for an alarm that may stand for its chamber. */
export function isSpeaking(alarm: AlarmView): boolean {
  return alarm.state !== 'normal' && !isQuiet(alarm);
}

function isGrave({ state, priority }: AlarmView): boolean {
  return state === 'acknowledged' && (priority === 'critical' || priority === 'high');
}

/** The alarm that stands for a chamber, undefined when none does: the worst that nobody has, but none of low priority while a grave one stands that somebody has. */
export function worstAlarm({ alarms }: Pick<ChamberView, 'alarms'>): AlarmView | undefined {
  const speaking = alarms.filter(isSpeaking).sort((one, other) => alarmRank(one) - alarmRank(other));
  const [worst] = speaking;
  const isLow = worst?.priority === 'low' && worst.state === 'unacknowledged';
  return isLow ? (speaking.find(isGrave) ?? worst) : worst;
}
