// The rota as it is said and drawn.
import { expect, it } from 'vitest';
import { dutyLines, sayDays, sayHours, weekBars } from '../../web/duty-words.ts';

it.each([
  { days: [1, 2, 3, 4, 5], said: 'Mon–Fri' },
  { days: [5, 1, 4, 3], said: 'Mon, Wed–Fri' },
  { days: [6, 7], said: 'Sat, Sun' },
  { days: [7, 6, 5, 4, 3, 2, 1], said: 'every day' },
  { days: [2, 2], said: 'Tue' },
])('the days $days are said as $said', ({ days, said }) => {
  expect(sayDays(days)).toBe(said);
});

it.each([
  { from: '06:00', to: '14:00', said: '06:00–14:00' },
  { from: '22:00', to: '06:00', said: '22:00–06:00 the next day' },
  { from: '14:00', to: '00:00', said: '14:00–24:00' },
  { from: '00:00', to: '00:00', said: 'the whole day' },
])('from $from to $to is said as $said', ({ from, to, said }) => {
  expect(sayHours({ from, to })).toBe(said);
});

it('equal hours of one person are one line, and other hours another', () => {
  const people = [{ id: 'a', name: 'Ida' }].map((one) => ({
    ...one,
    role: 'crew' as const,
    via: [],
    isOnDuty: true,
    isQuiet: false,
  }));
  const span = (weekday: number, from: string) => ({ personId: 'a', weekday, from, to: '14:00' });
  expect(
    dutyLines({ people, spans: [span(1, '06:00'), span(2, '06:00'), span(6, '08:00')] }).map(({ text }) => text),
  ).toEqual(['Ida: Mon, Tue, 06:00–14:00', 'Ida: Sat, 08:00–14:00']);
});

it('what goes through midnight goes on in the row of the next day, and who is on duty at once has a lane of their own', () => {
  const [monday, ...others] = weekBars([
    { personId: 'a', weekday: 7, from: '18:00', to: '06:00' },
    { personId: 'b', weekday: 1, from: '00:00', to: '12:00' },
    { personId: 'c', weekday: 1, from: '06:00', to: '18:00' },
  ]);
  expect(monday).toEqual([
    { personId: 'a', from: 0, to: 0.25, lane: 0 },
    { personId: 'b', from: 0, to: 0.5, lane: 1 },
    { personId: 'c', from: 0.25, to: 0.75, lane: 0 },
  ]);
  expect(others.at(-1)).toEqual([{ personId: 'a', from: 0.75, to: 1, lane: 0 }]);
});
