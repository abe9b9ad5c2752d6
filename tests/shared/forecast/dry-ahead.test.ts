import { describe, expect, it } from 'vitest';
import { DRY_AHEAD, foreseeDryness, isDryAhead } from '../../../shared/forecast/dry-ahead.ts';
import { type MixtureMemory, noMixture, updateMixture } from '../../../shared/forecast/trend-mixture.ts';
import { humidityModel } from '../../../shared/forecast/trend-models.ts';
import { MINUTE_MS } from '../../../shared/units.ts';

/** A tent read every minute for half an hour: humidity from 98 %RH, changing by so much a minute. */
function trendOf(perMinute: number) {
  let memory: MixtureMemory = noMixture;
  for (let minute = 0; minute <= 30; minute += 1) {
    memory = updateMixture(memory, { timeMs: minute * MINUTE_MS, value: 98 + perMinute * minute }, humidityModel);
  }
  return memory ?? expect.fail('nothing was taken in');
}

describe('dryness ahead', () => {
  it('comes for air that falls steadily, about when the straight line says', () => {
    // 98 − 30 × 0.2 = 92 %RH now; the low limit of 90 is ten minutes away.
    const { probability, minutes } = foreseeDryness(trendOf(-0.2), 90);
    expect(probability).toBeGreaterThan(DRY_AHEAD.warnAt);
    expect(minutes).toBeGreaterThan(7);
    expect(minutes).toBeLessThan(13);
  });

  it.each([
    ['still air', 0],
    ['air that gets wetter', 0.05],
  ])('does not come for %s', (_, perMinute) => {
    expect(foreseeDryness(trendOf(perMinute), 90).probability).toBeLessThan(DRY_AHEAD.standDownBelow);
  });

  it('is said from one chance on and unsaid only below a smaller one', () => {
    expect(isDryAhead(DRY_AHEAD.warnAt, false)).toBe(true);
    expect(isDryAhead(DRY_AHEAD.warnAt - 0.01, false)).toBe(false);
    expect(isDryAhead(DRY_AHEAD.standDownBelow, true)).toBe(true);
    expect(isDryAhead(DRY_AHEAD.standDownBelow - 0.01, true)).toBe(false);
  });
});
