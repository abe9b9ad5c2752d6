import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ClimateSample } from '../../../shared/exposure/day-figures.ts';
import { createExcursions, type ExcursionSearch, findExcursions } from '../../../shared/exposure/excursions.ts';
import { createExposure } from '../../../shared/exposure/exposure.ts';
import { HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';

const corridor = { temperature: { low: 20, high: 28 }, humidity: { low: 90, high: 100 } };
const search: ExcursionSearch = { silenceMs: 15 * MINUTE_MS, corridorAt: () => corridor };

function warm(...pairs: readonly (readonly [minute: number, temperature: number | null])[]): ClimateSample[] {
  return pairs.map(([minute, temperature]) => ({ timeMs: minute * MINUTE_MS, temperature, humidity: 95 }));
}

describe('excursions', () => {
  it('begin and end where the line crosses the limit, with their peak and their degree-hours', () => {
    // 26 → 30 → 27 → 24: crosses up at 5 min, down at 10 + 10·2/3 min. Triangles 2 °C high.
    expect(findExcursions(warm([0, 26], [10, 30], [20, 27], [30, 24]), search)).toEqual([
      {
        quantity: 'temperature',
        side: 'high',
        fromMs: 5 * MINUTE_MS,
        toMs: expect.closeTo((10 + 20 / 3) * MINUTE_MS, 3),
        peak: 30,
        peakMs: 10 * MINUTE_MS,
        degreeHours: expect.closeTo((2 * (5 + 20 / 3)) / 2 / 60, 9),
        endedByGap: false,
        stillOutside: false,
      },
    ]);
  });

  it.each([
    [
      'on the high limit is inside',
      [
        [0, 28],
        [10, 28],
      ],
      0,
    ],
    [
      'above it is outside',
      [
        [0, 28.1],
        [10, 28.1],
      ],
      1,
    ],
    [
      'on the low limit is inside',
      [
        [0, 20],
        [10, 20],
      ],
      0,
    ],
    [
      'below it is outside',
      [
        [0, 19.9],
        [10, 19.9],
      ],
      1,
    ],
    [
      'touching the limit from inside',
      [
        [0, 27],
        [10, 28],
        [20, 27],
      ],
      0,
    ],
    [
      'two in a row',
      [
        [0, 30],
        [10, 26],
        [20, 30],
      ],
      2,
    ],
  ] as const)('%s', (_why, pairs, count) => {
    expect(findExcursions(warm(...pairs), search)).toHaveLength(count);
  });

  it('are told apart by quantity and side, in order of their start', () => {
    const samples: ClimateSample[] = [
      { timeMs: 0, temperature: 24, humidity: 95 },
      { timeMs: 10 * MINUTE_MS, temperature: 24, humidity: 85 },
      { timeMs: 20 * MINUTE_MS, temperature: 18, humidity: 95 },
      { timeMs: 30 * MINUTE_MS, temperature: 24, humidity: 95 },
      { timeMs: 40 * MINUTE_MS, temperature: 24, humidity: 101 },
    ];
    const found = findExcursions(samples, search).map(({ quantity, side, peak }) => [quantity, side, peak]);
    expect(found).toEqual([
      ['humidity', 'low', 85],
      ['temperature', 'low', 18],
      ['humidity', 'high', 101],
    ]);
  });

  it.each([
    ['a gap of the silence is lived through', 25, [[10, 25, false]]],
    [
      'a longer one ends it at the last reading, and a new one starts after',
      26,
      [
        [10, 10, true],
        [26, 26, false],
      ],
    ],
  ])('%s', (_why, minute, expected) => {
    const found = findExcursions(warm([10, 30], [minute, 30]), search);
    expect(found.map((one) => [one.fromMs / MINUTE_MS, one.toMs / MINUTE_MS, one.endedByGap])).toEqual(expected);
  });

  it('count nothing across a gap', () => {
    const found = findExcursions(warm([0, 29], [10, 29], [60, 29], [70, 29]), search);
    expect(found.map((one) => one.degreeHours)).toEqual([expect.closeTo(1 / 6, 9), expect.closeTo(1 / 6, 9)]);
  });

  it('ended by a gap stay ended when the next reading is inside', () => {
    expect(findExcursions(warm([0, 29], [60, 25]), search)).toMatchObject([{ endedByGap: true, stillOutside: false }]);
  });

  it('say when the series ends while still outside', () => {
    const found = findExcursions(warm([0, 26], [10, 30], [12, 31]), search);
    expect(found).toMatchObject([{ toMs: 12 * MINUTE_MS, peak: 31, endedByGap: false, stillOutside: true }]);
  });

  it('pass over a value that is missing: its neighbours are joined', () => {
    const found = findExcursions(warm([0, 29], [5, null], [10, 29]), search);
    expect(found).toMatchObject([{ fromMs: 0, toMs: 10 * MINUTE_MS }]);
  });

  it('follow a limit that moves: a steady value is left behind by it', () => {
    // The high limit falls from 30 to 26 °C in 10 min: 28 is passed half-way, and lies 2 °C outside in the end.
    const corridorAt = (ms: number) => ({
      ...corridor,
      temperature: { low: 10, high: 30 - (4 * ms) / (10 * MINUTE_MS) },
    });
    const found = findExcursions(warm([0, 28], [10, 28]), { ...search, corridorAt });
    expect(found).toMatchObject([{ fromMs: 5 * MINUTE_MS, peak: 28, degreeHours: expect.closeTo(5 / 60, 9) }]);
  });

  it('have their peak where the value is furthest outside, not where it is highest', () => {
    const corridorAt = (ms: number) => ({ ...corridor, temperature: { low: 10, high: ms < 8 * MINUTE_MS ? 30 : 26 } });
    const found = findExcursions(warm([0, 31], [5, 30.5], [10, 29]), { ...search, corridorAt });
    expect(found).toMatchObject([{ peak: 29, peakMs: 10 * MINUTE_MS }]);
  });

  it('end, at the last reading judged, where no corridor holds any more', () => {
    const corridorAt = (ms: number) => (ms < 15 * MINUTE_MS ? corridor : null);
    const found = findExcursions(warm([0, 29], [10, 29], [20, 29]), { ...search, corridorAt });
    expect(found).toMatchObject([{ fromMs: 0, toMs: 10 * MINUTE_MS, endedByGap: false, stillOutside: false }]);
  });

  it('pass over a sample that is not later than the last', () => {
    const strays = warm([0, 26], [10, 27], [10, 40], [5, 40], [20, 26]);
    expect(findExcursions(strays, search)).toEqual([]);
  });

  it('can be asked at any time and go on afterwards', () => {
    const samples = warm([0, 26], [5, 30], [10, 31], [15, 25]);
    const running = createExcursions(search);
    const counts = samples.map((sample) => {
      running.add(sample);
      return running.result().map((one) => one.stillOutside);
    });
    expect(counts).toEqual([[], [true], [true], [false]]);
    expect(running.result()).toEqual(findExcursions(samples, search));
  });

  it('together have the degree-hours and the time that exposure counts beyond the same limit', () => {
    const steps = fc.array(fc.tuple(fc.integer({ min: 1, max: 20 }), fc.double({ min: 15, max: 33, noNaN: true })), {
      maxLength: 100,
    });
    fc.assert(
      fc.property(steps, (gaps) => {
        const exposure = createExposure({
          fromMs: 0,
          toMs: 100 * HOUR_MS,
          silenceMs: search.silenceMs,
          above: [28],
          below: [20],
        });
        let timeMs = 0;
        const samples = gaps.map(([gap, temperature]) => {
          timeMs += gap * MINUTE_MS;
          exposure.add(timeMs, temperature);
          return { timeMs, temperature, humidity: 95 };
        });
        const found = findExcursions(samples, search);
        const { degreeHoursAbove, hoursBelow } = exposure.result();
        const high = found.filter((one) => one.side === 'high').reduce((sum, one) => sum + one.degreeHours, 0);
        const lowMs = found.filter((one) => one.side === 'low').reduce((sum, one) => sum + one.toMs - one.fromMs, 0);
        expect(high).toBeCloseTo(degreeHoursAbove['28'] ?? Number.NaN, 7);
        expect(lowMs / HOUR_MS).toBeCloseTo(hoursBelow['20'] ?? Number.NaN, 7);
      }),
    );
  });
});
