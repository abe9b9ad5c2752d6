// Readings on their way into the file and back: nothing that a sensor sends is changed by it.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromScaled, packFlags, toScaled, unpackFlags } from '../../../server/store/scaled.ts';
import { FLAG, type Flag } from '../../../shared/readings/reading.ts';

describe('scaled values', () => {
  it('come back exactly for every number of up to four decimals that admission lets in', () => {
    fc.assert(
      fc.property(fc.integer({ min: -600_000, max: 1_100_000 }), (tenThousandths) => {
        const sent = Number((tenThousandths / 10_000).toFixed(4));
        expect(toScaled(sent)).toBe(tenThousandths);
        expect(fromScaled(toScaled(sent))).toBe(sent);
      }),
    );
  });

  it.each([
    [21.4, 214_000],
    // 8.6 × 10,000 is 86,000.00000000001 in floating point, 1.005 × 10,000 is 10,049.999999999998.
    [8.6, 86_000],
    [1.005, 10_050],
    [-0.0001, -1],
    [93.12344, 931_234],
    [93.12346, 931_235],
  ])('of %d is %d', (value, stored) => {
    expect(toScaled(value)).toBe(stored);
  });

  it('keep null as null: what was not measured is not zero', () => {
    expect([toScaled(null), fromScaled(null)]).toEqual([null, null]);
  });
});

describe('packed flags', () => {
  const flags = Object.values(FLAG) as Flag[];

  it('come back for every pair, late or not', () => {
    for (const temperatureFlag of flags)
      for (const humidityFlag of flags)
        for (const late of [false, true])
          expect(unpackFlags(packFlags(temperatureFlag, humidityFlag, late))).toEqual({
            temperatureFlag,
            humidityFlag,
            late,
          });
  });

  it('are told apart: no two pairs share a number', () => {
    const packed = flags.flatMap((one) =>
      flags.flatMap((other) => [false, true].map((late) => packFlags(one, other, late))),
    );
    expect(new Set(packed).size).toBe(flags.length * flags.length * 2);
  });
});
