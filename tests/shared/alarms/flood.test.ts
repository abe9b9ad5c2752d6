// Floods after IEC 62682: above 10 new alarms in 10 minutes one begins, below 5 it ends.
import { describe, expect, it } from 'vitest';
import { floodSpans, foldFlood, noAlarms, stepFlood } from '../../../shared/alarms/flood.ts';
import { MINUTE_MS, SECOND_MS } from '../../../shared/units.ts';

/** So many alarms, `everyMs` apart, from `fromMs` on. */
const series = (count: number, fromMs = 0, everyMs = SECOND_MS) =>
  Array.from({ length: count }, (_, index) => fromMs + index * everyMs);

describe('the beginning', () => {
  it.each([
    { times: series(10), isFlood: false, why: 'ten in ten minutes is the most that is none' },
    { times: series(11), isFlood: true, why: 'eleven is above ten' },
    { times: series(11, 0, MINUTE_MS), isFlood: false, why: 'the first has left the window when the eleventh comes' },
    { times: series(11, 0, MINUTE_MS - 1), isFlood: true, why: 'all eleven lie within the window' },
  ])('$why', ({ times, isFlood }) => {
    expect(foldFlood(times).isFlood).toBe(isFlood);
  });

  it('may come in one turn, and then holds for all alarms of that turn', () => {
    expect(stepFlood(noAlarms, series(11, 5, 0))).toMatchObject({ isFlood: true, begins: true });
  });

  it('is said once', () => {
    const flood = foldFlood(series(11));
    expect(stepFlood(flood, [12 * SECOND_MS])).toMatchObject({ isFlood: true, begins: false });
  });
});

describe('the end', () => {
  const flood = foldFlood(series(11));
  // Of 0 … 10 s: at 10 min and 5 s five are left, those of 6 … 10 s; at 6 s four.
  it.each([
    { atMs: 10 * MINUTE_MS + 5 * SECOND_MS, isFlood: true, why: 'five are in the window: not below five' },
    { atMs: 10 * MINUTE_MS + 6 * SECOND_MS, isFlood: false, why: 'four are: it is over' },
  ])('$why', ({ atMs, isFlood }) => {
    expect(stepFlood(flood, [atMs]).isFlood).toBe(isFlood);
  });

  it('lets another begin, which is said again', () => {
    const later = stepFlood(flood, [30 * MINUTE_MS]);
    expect(later).toMatchObject({ isFlood: false, begins: false });
    expect(stepFlood(later.state, series(11, 31 * MINUTE_MS))).toMatchObject({ begins: true });
  });

  it('nothing changes where no alarm comes', () => {
    expect(stepFlood(flood, [])).toEqual({ state: flood, isFlood: true, begins: false });
  });
});

describe('the floods of a series', () => {
  it('last from the eleventh alarm until the fifth newest has left the window', () => {
    expect(floodSpans(series(11))).toEqual([{ fromMs: 10 * SECOND_MS, toMs: 10 * MINUTE_MS + 6 * SECOND_MS }]);
  });

  it('are as many as there were', () => {
    expect(floodSpans([...series(11), ...series(11, 60 * MINUTE_MS)])).toHaveLength(2);
    expect(floodSpans(series(10))).toEqual([]);
  });
});
