import { describe, expect, it } from 'vitest';
import { followDryness, foreseeDryness } from '../../../shared/forecast/dry-ahead.ts';
import { type MixtureMemory, noMixture } from '../../../shared/forecast/trend-mixture.ts';
import { MINUTE_MS } from '../../../shared/units.ts';

const END_MS = 30 * MINUTE_MS;

/** A tent read every minute for half an hour: humidity from 98 %RH, changing by so much a minute. */
function trendOf(perMinute: number): MixtureMemory {
  let memory: MixtureMemory = noMixture;
  for (let minute = 0; minute <= 30; minute += 1) {
    memory = followDryness(memory, { timeMs: minute * MINUTE_MS, value: 98 + perMinute * minute });
  }
  return memory;
}

describe('dryness ahead', () => {
  it('comes for air that falls steadily, about when the straight line says, within its interval', () => {
    // 98 − 30 × 0.2 = 92 %RH now; the low limit of 90 is ten minutes away.
    const estimate = foreseeDryness(trendOf(-0.2), 90, END_MS) ?? expect.fail('nothing is foretold');
    const { minutes, low, high } = estimate;
    expect(minutes).toBeGreaterThan(7);
    expect(minutes).toBeLessThan(13);
    expect(low).toBeLessThan(minutes ?? 0);
    expect(high).toBeGreaterThan(minutes ?? 0);
  });

  it.each([
    ['still air', 0, 90, END_MS],
    ['air that gets wetter', 0.05, 90, END_MS],
    ['air that is drier already: that is an alarm, and no forecast', -0.3, 90, END_MS],
    ['a trend that nobody has fed for six minutes', -0.2, 90, END_MS + 6 * MINUTE_MS],
  ])('is not said of %s', (_, perMinute, low, nowMs) => {
    expect(foreseeDryness(trendOf(perMinute), low, nowMs)).toBeNull();
  });

  it('is far from a tent whose fog comes and goes, and near to one that loses it', () => {
    const foggy = Array.from({ length: 60 }, (_, i) => 96.5 + Math.sin(i / 3));
    const follow = (values: readonly number[]) =>
      values.reduce((memory, value, i) => followDryness(memory, { timeMs: i * MINUTE_MS, value }), noMixture);
    expect(foreseeDryness(follow(foggy), 90, 59 * MINUTE_MS)).toBeNull();
    const drying = foreseeDryness(follow([...foggy, 95, 93.8, 92.5, 91.4]), 90, 63 * MINUTE_MS);
    expect(drying?.limit).toBe(90);
    expect(drying?.minutes).toBeLessThan(10);
  });

  it('is not said before anything was measured', () => {
    expect(foreseeDryness(noMixture, 90, END_MS)).toBeNull();
  });
});
