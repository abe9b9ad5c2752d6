import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ExchangeStep, modelColumns, type WindowSeries } from '../../../shared/venting/relaxation-model.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyStep = fc.record({ hours: real(0.01, 0.5), house: real(0.005, 0.015), drive: real(-0.002, 0.01) });

/** Steps whose lines join end to end. */
function joined(drawn: readonly { hours: number; house: number; drive: number }[]): ExchangeStep[] {
  return drawn.slice(1).map(({ hours, house, drive }, i) => ({
    hours,
    houseFrom: drawn[i]?.house ?? house,
    houseTo: house,
    driveFrom: drawn[i]?.drive ?? drive,
    driveTo: drive,
    reading: i + 1,
  }));
}

describe('the columns of a window', () => {
  test('give the course that Runge and Kutta integrate from the differential equation, to a millionth', () => {
    const anyWindow = fc.array(anyStep, { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(anyWindow, real(0.05, 30), real(0.005, 0.02), real(0, 5), (drawn, rate, start, source) => {
        const steps = joined(drawn);
        const series: WindowSeries = { steps, values: drawn.map(() => 0) };
        const { fading, filling, mixed } = modelColumns(series, rate);
        const exact = mixed.map((value, i) => value + start * (fading[i] ?? 0) + source * (filling[i] ?? 0));
        const followed = integrate(steps, { rate, start, source });
        for (const [i, value] of exact.entries()) expect(Math.abs(value - (followed[i] ?? 0))).toBeLessThan(1e-6);
      }),
      { numRuns: 40 },
    );
  });

  test('a step that ends at no reading moves the course on and adds no row', () => {
    const level = { houseFrom: 0.01, houseTo: 0.01, driveFrom: 0.005, driveTo: 0.005 };
    const whole = [{ ...level, hours: 1, reading: 1 }];
    const halves = [
      { ...level, hours: 0.5, reading: null },
      { ...level, hours: 0.5, reading: 1 },
    ];
    const [one, two] = [whole, halves].map((steps) => modelColumns({ steps, values: [0, 0] }, 3));
    expect(two?.mixed).toHaveLength(2);
    for (const name of ['fading', 'filling', 'mixed'] as const) {
      expect(two?.[name][1]).toBeCloseTo(one?.[name][1] ?? Number.NaN, 14);
    }
  });

  test('in the end nothing is left of the start, and the source stands at drive over rate', () => {
    const steps = [{ hours: 100, houseFrom: 0.01, houseTo: 0.01, driveFrom: 0.005, driveTo: 0.005, reading: 1 }];
    const columns = modelColumns({ steps, values: [0, 0] }, 2);
    expect(columns.fading[1]).toBeCloseTo(0, 12);
    expect(columns.filling[1]).toBeCloseTo(0.005 / 2, 12);
    expect(columns.mixed[1]).toBeCloseTo(0.01, 12);
  });
});

function integrate(
  steps: readonly ExchangeStep[],
  { rate, start, source }: { rate: number; start: number; source: number },
): number[] {
  const values = [start];
  let w = start;
  for (const { hours, houseFrom, houseTo, driveFrom, driveTo } of steps) {
    const count = Math.ceil(hours / 0.002);
    const h = hours / count;
    const slope = (share: number, at: number) =>
      -rate * (at - houseFrom - (houseTo - houseFrom) * share) + source * (driveFrom + (driveTo - driveFrom) * share);
    for (let i = 0; i < count; i++) {
      const [from, middle, to] = [i / count, (i + 0.5) / count, (i + 1) / count];
      const a = slope(from, w);
      const b = slope(middle, w + (h / 2) * a);
      const c = slope(middle, w + (h / 2) * b);
      const d = slope(to, w + h * c);
      w += (h / 6) * (a + 2 * b + 2 * c + d);
    }
    values.push(w);
  }
  return values;
}
