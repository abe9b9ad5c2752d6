// Who has an alarm, or why it asks for nobody, in a few words. Pure.
import type { AlarmView } from '../shared/api/alarms.ts';
import { words } from './strings.ts';

/** Who has it, that nobody has, or why it asks for nobody. */
export function takenWords(alarm: AlarmView, at: (time: string) => string): string {
  if (alarm.state === 'suppressed' || alarm.state === 'out-of-service') return words.state.setAside[alarm.state];
  if (alarm.shelvedUntil !== null) return words.state.shelvedUntil(at(alarm.shelvedUntil), alarm.shelvedReason ?? '');
  if (alarm.acknowledgedAt !== null && alarm.state !== 'unacknowledged')
    return alarm.acknowledgedBy === null
      ? words.state.taken(at(alarm.acknowledgedAt))
      : words.state.takenBy(alarm.acknowledgedBy, at(alarm.acknowledgedAt));
  if (alarm.state !== 'returned-unacknowledged' || alarm.returnedAt === null) return words.state.noOneYet;
  // One of the service itself has no plan to be back in.
  return words.state[alarm.chamberId === null ? 'serviceOver' : 'returned'](at(alarm.returnedAt));
}
