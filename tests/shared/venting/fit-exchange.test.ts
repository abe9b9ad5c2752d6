import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';
import { fitExchange, type LevelFit } from '../../../shared/venting/fit-exchange.ts';
import { ratioOf } from './simulated-chamber.ts';
import {
  airRateAt,
  expectFit,
  fitVenting,
  openedInSteps,
  playVenting,
  SURFACES,
  TEMPERATURE,
} from './venting-scene.ts';

/** How far the fitted rates are off the true ones, as a share, in order of gap. */
function errorsOf(levels: readonly LevelFit[], surfaces: number): number[] {
  return levels.map(({ gapPercent, ratePerHour }) => ratePerHour / (airRateAt(gapPercent) + surfaces) - 1);
}

describe('surfaces that give off by what the air lacks, drifting house air, noise of ±0.16 %RH and ±0.02 °C', () => {
  test('the rates come out within 5, 5 and 10 % at 10, 25 and 40 % of gap, the true ones within their intervals', () => {
    const { levels } = fitVenting();
    expect(levels.map(({ gapPercent }) => gapPercent)).toEqual([10, 25, 40]);
    const [narrow = 1, middle = 1, wide = 1] = errorsOf(levels, SURFACES).map(Math.abs);
    expect(narrow).toBeLessThan(0.05);
    expect(middle).toBeLessThan(0.05);
    expect(wide).toBeLessThan(0.1);
    for (const { interval, gapPercent } of levels) {
      expect(interval.low).toBeLessThan(airRateAt(gapPercent) + SURFACES);
      expect(interval.high).toBeGreaterThan(airRateAt(gapPercent) + SURFACES);
    }
  });

  test('the source comes out within 5 %, and with it what is given off in an hour', () => {
    const { source } = fitVenting();
    expect(Math.abs(source.conductancePerHour / SURFACES - 1)).toBeLessThan(0.05);
    // The window ends two hours after the last step, at hour 9.
    const house = ratioOf(20 + Math.sin(9 / 4), 62 + 4 * Math.cos(9 / 3));
    expect(source.perHour / (SURFACES * (ratioOf(TEMPERATURE, 100) - house))).toBeCloseTo(1, 1);
    expect(source.toMs).toBeGreaterThan(8.9 * HOUR_MS);
    expect(source.level).toBe(2);
  });

  test('counts its readings and windows', () => {
    const fit = fitVenting();
    expect(fit).toMatchObject({ windows: 3, readings: 3 * 117, leftOut: [] });
    expect(fit.r2).toBeGreaterThan(0.9);
    expect(fit.levels.every(({ windows, readings }) => windows === 1 && readings === 117)).toBe(true);
  });

  test.each([
    { lagSeconds: 0, worst: 0.1 },
    { lagSeconds: 60, worst: 0.1 },
    { lagSeconds: 120, worst: 0.15 },
  ])('a sensor that lags by $lagSeconds s leaves every rate within $worst of the true one', ({ lagSeconds, worst }) => {
    const errors = errorsOf(fitVenting({ lagSeconds }).levels, SURFACES);
    for (const error of errors) expect(Math.abs(error)).toBeLessThan(worst);
  });

  test('with three times the noise the 95 % intervals hold the true rate in at least 92 % of 120 ventings, and mean something', () => {
    const steps = openedInSteps.slice(0, 2);
    const all = Array.from({ length: 120 }, (_, i) =>
      fitExchange(playVenting({ steps, hours: 6, noise: 3, draws: i + 1 }).record),
    );
    const levels = all.flatMap(({ fit }) => fit?.levels ?? []);
    expect(levels.length).toBeGreaterThan(220);
    const isHeld = ({ interval, gapPercent }: LevelFit) =>
      interval.low <= airRateAt(gapPercent) + SURFACES && airRateAt(gapPercent) + SURFACES <= interval.high;
    expect(levels.filter(isHeld).length / levels.length).toBeGreaterThan(0.92);
    const widths = levels
      .map(({ interval, ratePerHour }) => (interval.high - interval.low) / ratePerHour)
      .sort((x, y) => x - y);
    expect(widths[Math.floor(widths.length / 2)]).toBeLessThan(0.4);
  });
});

describe('a source that is constant whatever the air', () => {
  test('in still house air the rates come out within 3, 3 and 10 %, and the source within 5 %', () => {
    const { levels, source } = fitVenting({ source: 'constant', house: 'still' });
    const [narrow = 1, middle = 1, wide = 1] = errorsOf(levels, 0).map(Math.abs);
    expect(narrow).toBeLessThan(0.03);
    expect(middle).toBeLessThan(0.03);
    expect(wide).toBeLessThan(0.1);
    expect(Math.abs(source.perHour / 0.008 - 1)).toBeLessThan(0.05);
  });

  test('in drifting house air the model is not quite right, and the rates are within 25 %', () => {
    const { levels } = fitVenting({ source: 'constant' });
    for (const error of errorsOf(levels, 0)) expect(Math.abs(error)).toBeLessThan(0.25);
  });
});

describe('the same gap again', () => {
  const again = [...openedInSteps, { hours: 10, gapPercent: 25 }, { hours: 13, gapPercent: 10 }];

  test('is joined to one level, its rate surer than that of one window', () => {
    const fit = fitVenting({ steps: again, hours: 16 });
    expect(fit.levels.map(({ gapPercent, windows }) => ({ gapPercent, windows }))).toEqual([
      { gapPercent: 10, windows: 2 },
      { gapPercent: 25, windows: 2 },
      { gapPercent: 40, windows: 1 },
    ]);
    for (const error of errorsOf(fit.levels, SURFACES)) expect(Math.abs(error)).toBeLessThan(0.1);
  });

  test('with a fan that was switched on in between, the error tells that the two differ', () => {
    const fanned = (gap: number, hours: number) => (hours < 10 ? 1 : 1.8) * airRateAt(gap);
    const [level] = fitVenting({ steps: again, hours: 16, rateAt: fanned }).levels;
    const [alone] = fitVenting().levels;
    expect(level?.windows).toBe(2);
    expect(level?.standardError).toBeGreaterThan(4 * (alone?.standardError ?? Number.NaN));
  });
});

describe('a film that was wet and dried', () => {
  test('its windows are left out as another source, and the rates are those of the dry one', () => {
    const steps = [25, 10, 40].map((gapPercent, i) => ({ hours: 1 + 3 * i, gapPercent }));
    const { levels, leftOut } = fitVenting({ steps, surfacesAt: (hours) => (hours < 4 ? 8 : SURFACES) });
    expect(leftOut).toMatchObject([{ gapPercent: 25, refusal: { why: 'other-source' } }]);
    expect(levels.map(({ gapPercent }) => gapPercent)).toEqual([10, 40]);
    for (const error of errorsOf(levels, SURFACES)) expect(Math.abs(error)).toBeLessThan(0.1);
  });
});

describe('what does not matter', () => {
  const { record } = playVenting();
  const before = expectFit(fitExchange(record));

  test('when it happened', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e12, max: 1e12 }), (ms) => {
        const moved = {
          ...record,
          log: record.log.map((entry) => ({ ...entry, atMs: entry.atMs + ms })),
          chamber: record.chamber.map((sample) => ({ ...sample, timeMs: sample.timeMs + ms })),
          house: record.house.map((sample) => ({ ...sample, timeMs: sample.timeMs + ms })),
          untilMs: record.untilMs + ms,
        };
        expect(expectFit(fitExchange(moved)).levels).toEqual(before.levels);
      }),
      { numRuns: 10 },
    );
  });

  test('a probe that reads 2 %RH too high or low: the source takes it up, the rates stay within 8 %', () => {
    for (const offset of [-2, 2]) {
      const chamber = record.chamber.map((one) => ({ ...one, humidity: (one.humidity ?? 0) + offset }));
      const after = expectFit(fitExchange({ ...record, chamber }));
      after.levels.forEach(({ ratePerHour }, i) => {
        expect(Math.abs(ratePerHour / (before.levels[i]?.ratePerHour ?? 0) - 1)).toBeLessThan(0.08);
      });
      expect(Math.sign(after.source.conductancePerHour - before.source.conductancePerHour)).toBe(Math.sign(offset));
    }
  });
});

describe('no fit', () => {
  const { record } = playVenting();
  const wet = (from: number, to: number) =>
    record.chamber.map((sample) =>
      sample.timeMs >= from * HOUR_MS && sample.timeMs < to * HOUR_MS ? { ...sample, humidity: 99.8 } : sample,
    );

  test.each([
    { given: { log: [] }, why: 'gap-never-changed', because: 'nothing was opened' },
    {
      given: { log: [{ atMs: 0, kind: 'gap', gapPercent: 0 }] },
      why: 'gap-never-changed',
      because: 'the log says that it was closed, and no more',
    },
    { given: { log: record.log.slice(0, 1) }, why: 'too-few-gaps', because: 'one gap only' },
    { given: { chamber: wet(0, 10) }, why: 'saturated', because: 'the sensor stood at its top and hides the fall' },
    { given: { chamber: wet(0, 7) }, why: 'too-few-gaps', because: 'the same for all but the last' },
    { given: { house: [] }, why: 'no-house-air', because: 'there is no house probe' },
    { given: { chamber: [] }, why: 'too-few-readings', because: 'there are no readings' },
    { given: { untilMs: 1.1 * HOUR_MS }, why: 'too-few-readings', because: 'it was opened six minutes ago' },
  ])('$why: $because', ({ given, why }) => {
    expect(fitExchange({ ...record, ...given })).toMatchObject({ fit: null, why });
  });

  test('poor-fit: humidity that swings with a fogger is not exchange', () => {
    const chamber = record.chamber.map((sample) => {
      const swing = 12 * Math.sin((2 * Math.PI * sample.timeMs) / (35 * MINUTE_MS));
      return { ...sample, humidity: 75 + swing };
    });
    expect(fitExchange({ ...record, chamber })).toMatchObject({ fit: null, why: 'poor-fit' });
  });

  test('not-monotone: a fan that was switched off between two gaps', () => {
    const { record: fanned } = playVenting({
      rateAt: (gap) => (gap === 10 ? 14 : gap === 25 ? 8 : 0.6),
      hours: 7,
      steps: openedInSteps.slice(0, 2),
    });
    expect(fitExchange(fanned)).toMatchObject({ fit: null, why: 'not-monotone' });
  });

  test('every refusal names each change that says nothing, with its reason', () => {
    const result = fitExchange({ ...record, chamber: wet(0, 7) });
    expect(result.fit).toBeNull();
    if (result.fit !== null) return;
    expect(result.leftOut.map(({ gapPercent, refusal }) => ({ gapPercent, refusal }))).toEqual([
      { gapPercent: 10, refusal: { why: 'saturated' } },
      { gapPercent: 25, refusal: { why: 'saturated' } },
    ]);
    expect(result.why).toBe('too-few-gaps');
  });
});
