// The shortcut for a single probe is the climate itself.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chamberClimate } from '../../../shared/readings/chamber-climate.ts';
import { FLAG } from '../../../shared/readings/reading.ts';
import { OneProbeClimate } from '../../../shared/replay/one-probe-climate.ts';

describe('OneProbeClimate', () => {
  it('says of any reading what the climate of the chamber says', () => {
    const flag = fc.constantFrom(...Object.values(FLAG));
    const value = (min: number, max: number) => fc.option(fc.double({ min, max, noNaN: true }));
    fc.assert(
      fc.property(value(-10, 60), value(1, 100), flag, flag, (temperature, humidity, temperatureFlag, humidityFlag) => {
        const sample = { timeMs: 1000, temperature, humidity, temperatureFlag, humidityFlag };
        const climate = chamberClimate([{ probeId: 'p', place: 'canopy', silenceMs: 60_000, ...sample }], 1000, 0);
        const short = new OneProbeClimate(sample);
        for (const key of Object.keys(climate) as (keyof typeof climate)[]) expect(short[key], key).toBe(climate[key]);
      }),
    );
  });
});
