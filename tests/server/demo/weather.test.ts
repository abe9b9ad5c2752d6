// The invented greenhouse's weather: within its bounds, repeatable, another day every day, in local time.
import { describe, expect, it } from 'vitest';
import { createLocalClock, timeOfDayBack } from '../../../server/demo/local-time.ts';
import { ratioOf } from '../../../server/demo/moist-air.ts';
import { createWeather } from '../../../server/demo/weather.ts';
import { HOUR_MS } from '../../../shared/units.ts';

const startMs = Date.parse('2026-04-06T00:00:00+02:00');
const zone = 'Europe/Amsterdam';
const hoursOf = (days: number): number[] => Array.from({ length: days * 24 }, (_, hour) => startMs + hour * HOUR_MS);

describe('createWeather', () => {
  it('keeps house and sun within a mild spring for every seed', () => {
    for (let seed = 0; seed < 20; seed += 1) {
      const weatherAt = createWeather(seed, zone);
      for (const weather of hoursOf(10).map(weatherAt)) {
        expect(weather.houseTemperature).toBeGreaterThan(15.5);
        expect(weather.houseTemperature).toBeLessThan(24.5);
        expect(weather.houseHumidity).toBeGreaterThan(54);
        expect(weather.houseHumidity).toBeLessThan(77);
        expect(weather.sunWm2).toBeGreaterThanOrEqual(0);
        expect(weather.sunWm2).toBeLessThanOrEqual(weather.clearSunWm2);
        expect(weather.clearSunWm2).toBeLessThanOrEqual(700);
      }
    }
  });

  it('has no sun at local midnight and most around one in the afternoon, whatever the zone', () => {
    for (const [place, offset] of [
      ['Asia/Tokyo', 9],
      ['America/Los_Angeles', -7],
    ] as const) {
      const weatherAt = createWeather(3, place);
      const localMidnightMs = Date.UTC(2026, 3, 6) - offset * HOUR_MS;
      expect(weatherAt(localMidnightMs).clearSunWm2).toBe(0);
      expect(weatherAt(localMidnightMs + 13.25 * HOUR_MS).clearSunWm2).toBeCloseTo(700, 6);
    }
  });

  it('is warmer in the afternoon than before dawn, and drier', () => {
    const weatherAt = createWeather(8, zone);
    const dawn = weatherAt(startMs + 4 * HOUR_MS);
    const afternoon = weatherAt(startMs + 15 * HOUR_MS);
    expect(afternoon.houseTemperature).toBeGreaterThan(dawn.houseTemperature + 2);
    expect(afternoon.houseHumidity).toBeLessThan(dawn.houseHumidity);
  });

  it('differs from day to day and from seed to seed, and repeats for the same seed in any order', () => {
    const noons = [0, 1, 2, 3, 4].map((day) => startMs + (day * 24 + 12) * HOUR_MS);
    const of = (seed: number, times: number[]): number[] =>
      times.map((timeMs) => createWeather(seed, zone)(timeMs).sunWm2);
    expect(new Set(of(1, noons)).size).toBe(5);
    expect(of(2, noons)).not.toEqual(of(1, noons));
    expect(of(1, [...noons].reverse()).reverse()).toEqual(of(1, noons));
  });

  it('states humidity ratio and relative humidity of the same air', () => {
    const weather = createWeather(4, zone)(startMs);
    expect(weather.houseHumidityRatio).toBeCloseTo(ratioOf(weather.houseTemperature, weather.houseHumidity), 12);
  });

  it('does not jump at midnight', () => {
    const weatherAt = createWeather(6, zone);
    const midnightMs = startMs + 72 * HOUR_MS;
    const [before, after] = [weatherAt(midnightMs - 1000), weatherAt(midnightMs + 1000)];
    expect(Math.abs(after.houseTemperature - before.houseTemperature)).toBeLessThan(0.01);
    expect(Math.abs(after.houseHumidity - before.houseHumidity)).toBeLessThan(0.05);
  });
});

describe('local time', () => {
  it.each([
    { at: '2026-03-29T00:59:59Z', hour: 1.9997, why: 'the last second of winter time in Amsterdam' },
    { at: '2026-03-29T01:00:00Z', hour: 3, why: 'clocks have gone forward' },
    { at: '2026-10-25T00:59:59Z', hour: 2.9997, why: 'the last second of summer time' },
    { at: '2026-10-25T01:00:00Z', hour: 2, why: 'clocks have gone back' },
  ])('shows $hour h at $at: $why', ({ at, hour }) => {
    expect(createLocalClock(zone)(Date.parse(at)).hour).toBeCloseTo(hour, 3);
  });

  it('counts calendar days back over a change of the clocks', () => {
    const backMs = timeOfDayBack(Date.parse('2026-03-30T10:00:00Z'), 2, '15:10', zone);
    expect(new Date(backMs).toISOString()).toBe('2026-03-28T14:10:00.000Z');
  });
});
