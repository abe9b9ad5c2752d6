import { describe, expect, test } from 'vitest';
import { HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';
import { cutWindows, type ExchangeWindow } from '../../../shared/venting/cut-windows.ts';
import { fitWindow } from '../../../shared/venting/fit-window.ts';
import { airRateAt, playVenting, SURFACES } from './venting-scene.ts';

const RATE = airRateAt(20) + SURFACES;
const steps = [{ hours: 1, gapPercent: 20 }];

function windowOf(surfacesAt: (hours: number) => number): ExchangeWindow {
  const { record } = playVenting({ steps, hours: 4, house: 'still', surfacesAt });
  const [window] = cutWindows(record).windows;
  if (window === undefined) throw new Error('the gap was changed');
  return window;
}

describe('one pace', () => {
  const window = windowOf(() => SURFACES);

  test('is fitted over the whole two hours', () => {
    const { fit } = fitWindow(window);
    expect(fit?.readings).toBe(117);
    expect(Math.abs((fit?.ratePerHour ?? 0) / RATE - 1)).toBeLessThan(0.05);
  });

  test('begins where the air stood before the change', () => {
    expect(window.before?.hoursFromChange).toBeCloseTo((3 * MINUTE_MS) / HOUR_MS, 10);
    expect(window.before?.ratio).toBeGreaterThan(window.series.values[0] ?? 1);
  });

  test('is fitted as well where nothing is known from before', () => {
    expect(fitWindow({ ...window, before: null })).toEqual(fitWindow(window));
  });
});

describe('a fast fall with a slow one behind it', () => {
  // What is given off shrinks from ten to one, while it dries over hours: no model of one pace is right.
  const drying = windowOf((hours) => 1 + 9 * Math.exp(-0.6 * Math.max(0, hours - 1)));

  test('is fitted over its first half hour, where the exchange shows: too slow, by no more than half', () => {
    const { fit } = fitWindow(drying);
    expect(fit?.readings).toBe(31);
    const rate = fit?.ratePerHour ?? 0;
    expect(rate).toBeGreaterThan(0.5 * (airRateAt(20) + 10));
    expect(rate).toBeLessThan(airRateAt(20) + 10);
  });

  test('is refused at every length where the curve, carried back to the change, misses where the air stood', () => {
    const balance = 0.009;
    const jumped = { ...windowOf(() => SURFACES), before: { ratio: balance + 0.02, hoursFromChange: 0.05 } };
    expect(fitWindow(jumped)).toMatchObject({ fit: null, why: 'two-paces' });
  });
});

test('a window without a good fit says why the whole of it gives none', () => {
  const window = windowOf(() => SURFACES);
  const short = { ...window, series: { ...window.series, values: window.series.values.slice(0, 5) } };
  expect(fitWindow(short)).toMatchObject({ fit: null, why: 'too-few-readings' });
});
