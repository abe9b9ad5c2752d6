import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Calibration, calibrate, isCorrectedAlike } from '../../../shared/readings/calibration.ts';
import { calibrationFaults } from '../../../shared/readings/calibration-faults.ts';

const reading = (timeMs: number, temperature: number | null, humidity: number | null) => {
  return { timeMs, temperature, humidity };
};
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('calibrate', () => {
  const offsets: Calibration = {
    fromMs: 1000,
    kind: 'offset',
    temperature: { offset: -0.3 },
    humidity: { offset: 1.5 },
  };
  // NaCl and K2SO4 at 25 °C: the probe showed 77.3 for 75.3, and 97.3 for 97.3.
  const twoSalts: Calibration = {
    fromMs: 2000,
    kind: 'two-point',
    humidity: [
      { reference: 75.3, measured: 77.3 },
      { reference: 97.3, measured: 97.3 },
    ],
  };

  test.each([
    { atMs: 999, temperature: 22, humidity: 90, why: 'before the entry the value is raw' },
    { atMs: 1000, temperature: 21.7, humidity: 91.5, why: 'from its instant on it holds' },
    { atMs: 9999, temperature: 21.7, humidity: 91.5, why: 'and goes on' },
  ])('at $atMs ms: $why', ({ atMs, temperature, humidity }) => {
    const calibrated = calibrate(reading(atMs, 22, 90), [offsets]);
    expect(calibrated.temperature).toBeCloseTo(temperature, 10);
    expect(calibrated.humidity).toBeCloseTo(humidity, 10);
  });

  test.each([
    { raw: 77.3, humidity: 75.3, why: 'the first point' },
    { raw: 97.3, humidity: 97.3, why: 'the second point' },
    { raw: 87.3, humidity: 86.3, why: 'half-way between' },
    { raw: 67.3, humidity: 64.3, why: 'the line goes on beyond the points' },
  ])('a two-point entry reads $raw as $humidity: $why', ({ raw, humidity }) => {
    expect(calibrate(reading(2000, null, raw), [twoSalts]).humidity).toBeCloseTo(humidity, 10);
  });

  test('a later entry takes the place of an earlier one and does not add to it', () => {
    expect(calibrate(reading(3000, 22, 77.3), [offsets, twoSalts]).humidity).toBeCloseTo(75.3, 10);
  });

  test('an entry that names only humidity leaves the temperature offset before it standing', () => {
    expect(calibrate(reading(3000, 22, 90), [offsets, twoSalts]).temperature).toBeCloseTo(21.7, 10);
  });

  test('an offset of 0 undoes', () => {
    const undone: Calibration = { fromMs: 2500, kind: 'offset', temperature: { offset: 0 } };
    expect(calibrate(reading(3000, 22, 90), [offsets, undone])).toMatchObject({ temperature: 22, humidity: 91.5 });
  });

  test('the order in which entries are listed matters only for two that begin together: the later listed holds', () => {
    const other: Calibration = { fromMs: 1000, kind: 'offset', humidity: { offset: -2 } };
    expect(calibrate(reading(3000, 22, 90), [twoSalts, offsets])).toEqual(
      calibrate(reading(3000, 22, 90), [offsets, twoSalts]),
    );
    expect(calibrate(reading(1500, 22, 90), [offsets, other]).humidity).toBe(88);
    expect(calibrate(reading(1500, 22, 90), [other, offsets]).humidity).toBe(91.5);
  });

  test('a half that was not measured stays so', () => {
    expect(calibrate(reading(1000, null, null), [offsets])).toEqual(reading(1000, null, null));
  });

  test.each([
    { raw: 99.5, offset: 3, humidity: 100, why: 'saturated air does not become impossible air' },
    { raw: 103, offset: -1, humidity: 102, why: 'a wet sensor that reads above 100 still does' },
    { raw: 103, offset: 2, humidity: 103, why: 'and is not made worse' },
    { raw: 1, offset: -3, humidity: 0, why: 'nor below 0' },
  ])('$raw %RH with an offset of $offset is $humidity: $why', ({ raw, offset, humidity }) => {
    const entry: Calibration = { fromMs: 0, kind: 'offset', humidity: { offset } };
    expect(calibrate(reading(0, null, raw), [entry]).humidity).toBe(humidity);
  });

  test('raw values and everything else of a reading stay as they are', () => {
    const raw = { ...reading(1000, 22, 90), temperatureFlag: 1, late: false };
    expect(calibrate(raw, [offsets])).toMatchObject({ temperatureFlag: 1, late: false, timeMs: 1000 });
    expect(raw).toEqual({ ...reading(1000, 22, 90), temperatureFlag: 1, late: false });
    expect(calibrate(raw, [])).toBe(raw);
  });

  test('corrected values have the four decimals of stored ones', () => {
    const thirds: Calibration = {
      ...{ fromMs: 0, kind: 'two-point' },
      humidity: [
        { reference: 75, measured: 74 },
        { reference: 98, measured: 95 },
      ],
    };
    // 75 + 23/21 · 6.
    expect(calibrate(reading(0, null, 80), [thirds]).humidity).toBe(81.5714);
    const offset: Calibration = { fromMs: 0, kind: 'offset', temperature: { offset: 0.1 } };
    expect(calibrate(reading(0, 0.2, null), [offset]).temperature).toBe(0.3);
  });

  test('any two points without fault are met exactly, and a wetter raw value never comes out drier', () => {
    const point = fc.record({ reference: real(5, 95), measured: real(5, 95) });
    fc.assert(
      fc.property(point, point, real(0, 100), real(0, 100), (one, other, raw, wetter) => {
        const entry: Calibration = { fromMs: 0, kind: 'two-point', humidity: [one, other] };
        fc.pre(calibrationFaults(entry).length === 0);
        for (const { reference, measured } of [one, other]) {
          expect(calibrate(reading(0, null, measured), [entry]).humidity).toBeCloseTo(reference, 3);
        }
        const read = (value: number) => calibrate(reading(0, null, value), [entry]).humidity ?? Number.NaN;
        expect(read(Math.max(raw, wetter))).toBeGreaterThanOrEqual(read(Math.min(raw, wetter)));
      }),
    );
  });
});

describe('isCorrectedAlike', () => {
  const up: Calibration = { fromMs: 1000, kind: 'offset', humidity: { offset: 2 } };
  const span = { fromMs: 1000, toMs: 2000 };

  test.each([
    { history: [], humidity: { min: 0, max: 100 }, alike: true, why: 'nothing corrects' },
    { history: [up], humidity: { min: 90, max: 98 }, alike: true, why: 'the highest comes out at 100, not above' },
    { history: [up], humidity: { min: 90, max: 98.1 }, alike: false, why: 'the highest would have to be held' },
    { history: [up], humidity: { min: 98.5, max: 99 }, alike: true, why: 'all of them are held at 100' },
    { history: [up], humidity: null, alike: true, why: 'no humidity was said' },
    {
      history: [{ ...up, fromMs: 1001 }],
      humidity: { min: 50, max: 60 },
      alike: false,
      why: 'an entry begins in between',
    },
    { history: [{ ...up, fromMs: 2000 }], humidity: { min: 50, max: 60 }, alike: true, why: 'an entry begins after' },
    { history: [{ ...up, fromMs: 999 }], humidity: { min: 50, max: 60 }, alike: true, why: 'an entry began before' },
    {
      history: [{ fromMs: 1500, kind: 'offset', temperature: { offset: 1 } }],
      humidity: null,
      alike: false,
      why: 'the temperature is corrected otherwise in the second half',
    },
  ] satisfies { history: Calibration[]; humidity: { min: number; max: number } | null; alike: boolean; why: string }[])(
    'is $alike: $why',
    ({ history, humidity, alike }) => {
      expect(isCorrectedAlike(history, span, humidity)).toBe(alike);
    },
  );
});
