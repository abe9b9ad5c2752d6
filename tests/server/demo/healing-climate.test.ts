// A whole simulated healing: what a manager would expect to see on each day.
import { describe, expect, it } from 'vitest';
import type { ChamberReadings } from '../../../server/demo/live-chamber.ts';
import { simulateChamber } from '../../../server/demo/simulate-chamber.ts';
import { HOUR_MS } from '../../../shared/units.ts';
import { closedMs, options } from './chamber-cases.ts';

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const humidities = (readings: readonly ChamberReadings[]): number[] => readings.map((r) => r.canopy[0].humidity);
const temperatures = (readings: readonly ChamberReadings[]): number[] => readings.map((r) => r.canopy[0].temperature);

describe.each([1, 5, 9])('a steady healing with seed %i', (seed) => {
  const healing = [
    ...simulateChamber({ ...options, seed, startMs: closedMs - 4 * HOUR_MS, endMs: closedMs + 200 * HOUR_MS }),
  ];
  const hours = (from: number, to: number): ChamberReadings[] =>
    healing.filter((r) => r.timeMs >= closedMs + from * HOUR_MS && r.timeMs < closedMs + to * HOUR_MS);

  it('is less than saturated while the tent is loaded', () => {
    expect(mean(humidities(hours(-2, 0)))).toBeGreaterThan(80);
    expect(mean(humidities(hours(-2, 0)))).toBeLessThan(92);
  });

  it('stays at 95–99 %RH in every hour of the closed days, at the top of the scale for minutes at most', () => {
    for (let hour = 2; hour < 90; hour += 1) {
      const hourly = mean(humidities(hours(hour, hour + 1)));
      expect(hourly).toBeGreaterThan(94.5);
      expect(hourly).toBeLessThan(99.3);
    }
    // Half an hour at 99.5 %RH or more would make a probe suspect.
    expect(humidities(hours(2, 110)).filter((humidity) => humidity >= 99.5).length).toBeLessThan(10);
  });

  it('stays at 20–25 °C, give or take one, in a wave of day and night', () => {
    const closed = temperatures(hours(2, 110));
    expect(Math.min(...closed)).toBeGreaterThan(19);
    expect(Math.max(...closed)).toBeLessThan(26.5);
    for (const day of [0, 1, 2]) {
      const [night, noon] = [hours(day * 24 + 11, day * 24 + 15), hours(day * 24 + 22, day * 24 + 25)];
      expect(mean(temperatures(noon))).toBeGreaterThan(mean(temperatures(night)) + 2);
    }
  });

  it('comes down to house level in venting, day by day', () => {
    const levels = [hours(100, 110), hours(113, 125), hours(125, 137), hours(137, 149), hours(152, 160)].map((part) =>
      mean(humidities(part)),
    );
    expect(levels).toEqual([...levels].sort((a, b) => b - a));
    const last = hours(154, 160);
    expect(Math.abs(mean(humidities(last)) - mean(last.map((r) => r.house.humidity)))).toBeLessThan(8);
  });

  it('follows the house when hardened', () => {
    const hardening = hours(162, 200);
    expect(Math.abs(mean(humidities(hardening)) - mean(hardening.map((r) => r.house.humidity)))).toBeLessThan(4);
    expect(Math.max(...temperatures(hardening))).toBeLessThan(27.5);
  });

  it('has a film cooler than the air and wet while the tent is closed', () => {
    const closed = hours(4, 90);
    expect(mean(closed.map((r) => r.film?.temperature ?? Number.NaN))).toBeLessThan(mean(temperatures(closed)) - 0.3);
    expect(mean(closed.map((r) => r.film?.humidity ?? Number.NaN))).toBeGreaterThan(99);
  });

  it('has two canopy probes that agree within the limits for neighbours', () => {
    for (const { canopy } of hours(2, 110)) {
      expect(Math.abs(canopy[0].temperature - canopy[1].temperature)).toBeLessThan(0.5);
      expect(Math.abs(canopy[0].humidity - canopy[1].humidity)).toBeLessThan(4);
    }
  });
});
