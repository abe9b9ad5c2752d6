import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { saltHumidity, saltNames, saltPoints } from '../../../shared/readings/salt-points.ts';

describe('humidity over a saturated salt', () => {
  test.each([
    { temperature: 22.5, humidity: (75.48 + 75.3) / 2, why: 'half-way from 20 to 25 °C' },
    { temperature: 26, humidity: 75.3 + (75.09 - 75.3) / 5, why: 'a fifth of the way from 25 to 30 °C' },
  ])('sodium chloride at $temperature °C: $why', ({ temperature, humidity }) => {
    expect(saltHumidity('sodium chloride', temperature)).toBeCloseTo(humidity, 10);
  });

  test.each([19.99, 30.01, -300, Number.NaN])('outside the published 20–30 °C, at %s °C, there is no value', (t) => {
    expect(saltHumidity('potassium sulfate', t)).toBeNull();
  });

  test('between 20 and 30 °C every salt lies between its ends and falls as it gets warmer', () => {
    const warm = fc.double({ min: 20, max: 30, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(...saltNames), warm, warm, (salt, one, other) => {
        const [cooler, warmer] = [Math.min(one, other), Math.max(one, other)];
        const [most, , least] = saltPoints[salt].humidity;
        const [high, low] = [saltHumidity(salt, cooler) ?? NaN, saltHumidity(salt, warmer) ?? NaN];
        expect(high).toBeLessThanOrEqual(most);
        expect(low).toBeLessThanOrEqual(high);
        expect(low).toBeGreaterThanOrEqual(least);
      }),
    );
  });

  test('every salt names its formula', () => {
    expect(saltNames.map((salt) => saltPoints[salt].formula)).toEqual(['MgCl2', 'NaCl', 'KCl', 'K2SO4']);
  });
});
