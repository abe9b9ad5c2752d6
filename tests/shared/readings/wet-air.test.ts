// From when wet air counts against a probe.
import { describe, expect, it } from 'vitest';
import type { Calibration } from '../../../shared/readings/calibration.ts';
import { wetAirSince } from '../../../shared/readings/wet-air.ts';
import { DAY_MS } from '../../../shared/units.ts';

const NOW = Date.UTC(2026, 2, 31);
const ago = (days: number) => NOW - days * DAY_MS;
const humidity = (fromMs: number): Calibration => ({ kind: 'offset', fromMs, humidity: { offset: -1 } });
const temperature = (fromMs: number): Calibration => ({ kind: 'offset', fromMs, temperature: { offset: 0.2 } });
const salts = (fromMs: number): Calibration => ({
  ...{ kind: 'two-point', fromMs },
  humidity: [
    { reference: 75.3, measured: 77 },
    { reference: 97.3, measured: 98 },
  ],
});

describe('wet air counts', () => {
  it.each<[readonly Calibration[], number, string]>([
    [[], ago(30), 'for thirty days, wherever it stood'],
    [[humidity(ago(40))], ago(30), 'for thirty days, corrected before'],
    [[humidity(ago(5))], ago(5), 'since its humidity was corrected'],
    [[salts(ago(5))], ago(5), 'since it was held over salts'],
    [[humidity(ago(8)), humidity(ago(3))], ago(3), 'since the newest of two corrections'],
    [[temperature(ago(5))], ago(30), 'on through a correction of temperature alone'],
    [[humidity(ago(-1))], ago(30), 'on until a correction begins to hold'],
    [[humidity(NOW)], NOW, 'from this instant, corrected now'],
  ])('corrected %j: from %i (%s)', (calibrations, sinceMs) => {
    expect(wetAirSince(calibrations, NOW)).toBe(sinceMs);
  });
});
