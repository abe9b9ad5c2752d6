// The rota of the invented crew: early and late on every day, the manager at night, and one gap on Sunday so that the page shows what it warns of.

import type { DutySpan } from '../../shared/telling/duty.ts';
import type { Person } from '../store/store.ts';

const week = [1, 2, 3, 4, 5, 6, 7];

/** Times of duty of these people; empty when there is nobody of the crew. */
export function demoRota(people: readonly Pick<Person, 'id' | 'role'>[]): DutySpan[] {
  const crew = people.filter(({ role }) => role === 'crew');
  const manager = people.find(({ role }) => role === 'manager');
  const [early, late = early] = crew;
  if (early === undefined || late === undefined || manager === undefined) return [];
  return week.flatMap((weekday) => [
    { personId: early.id, weekday, from: '06:00', to: '14:00' },
    { personId: late.id, weekday, from: '14:00', to: weekday === 7 ? '20:00' : '22:00' },
    { personId: manager.id, weekday, from: '22:00', to: '06:00' },
  ]);
}
