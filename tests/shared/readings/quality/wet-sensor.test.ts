import { describe, expect, it } from 'vitest';
import { defaultQualityLimits } from '../../../../shared/readings/quality/quality-limits.ts';
import {
  type AirSample,
  emptyWetSensorMemory,
  type WetSensorTested,
  wetSensor,
} from '../../../../shared/readings/quality/wet-sensor.ts';
import { HOUR_MS, MINUTE_MS } from '../../../../shared/units.ts';

const limits = defaultQualityLimits.wetSensor;

interface Story {
  readonly hours: number;
  readonly temperature: (hour: number) => number | null;
  readonly humidity: (hour: number) => number | null;
}

/** What is said of the last of readings every five minutes. */
function tell({ hours, temperature, humidity }: Story): WetSensorTested {
  let tested: WetSensorTested = { memory: emptyWetSensorMemory, flag: 2, saturatedOrWet: false };
  for (let timeMs = 0; timeMs <= hours * HOUR_MS; timeMs += 5 * MINUTE_MS) {
    const hour = timeMs / HOUR_MS;
    const sample: AirSample = { timeMs, temperature: temperature(hour), humidity: humidity(hour) };
    tested = wetSensor(tested.memory, sample, limits);
  }
  return tested;
}

const steady = () => 22;
const top = () => 100;
const warmingBy = (degrees: number) => (hour: number) => 22 + degrees * Math.min(1, hour);

describe('wet sensor', () => {
  it.each([
    [
      'a saturated tent for three days at a steady temperature is honest',
      { hours: 72, temperature: steady, humidity: top },
      1,
    ],
    ['air that cools stays saturated', { hours: 12, temperature: (h: number) => 30 - h, humidity: top }, 1],
    ['pinned for hours while the air got 3 °C warmer', { hours: 3, temperature: warmingBy(3), humidity: top }, 3],
    ['warmed by a little less', { hours: 12, temperature: warmingBy(2.9), humidity: top }, 1],
    ['pinned a little shorter', { hours: 3 - 1 / 12, temperature: warmingBy(3), humidity: top }, 1],
    ['pinned just at the top mark', { hours: 4, temperature: warmingBy(4), humidity: () => 99.5 }, 3],
    ['just under it', { hours: 4, temperature: warmingBy(4), humidity: () => 99.4 }, 1],
    [
      'the day swings while it stands',
      { hours: 30, temperature: (h: number) => 22 + 2 * Math.sin(h / 4), humidity: top },
      3,
    ],
    [
      'it left its top in between',
      { hours: 5, temperature: warmingBy(4), humidity: (h: number) => (h === 3 ? 98 : 100) },
      1,
    ],
    [
      'warmed only before it was pinned',
      { hours: 8, temperature: warmingBy(4), humidity: (h: number) => (h < 1 ? 95 : 100) },
      1,
    ],
    ['above 100 at once', { hours: 0, temperature: steady, humidity: () => 100.1 }, 3],
    ['100 itself is not above', { hours: 0, temperature: steady, humidity: top }, 1],
    ['without a temperature there is no evidence', { hours: 12, temperature: () => null, humidity: top }, 1],
    ['nothing measured', { hours: 12, temperature: warmingBy(4), humidity: () => null }, 9],
  ])('%s', (_why, story, flag) => {
    expect(tell(story).flag).toBe(flag);
  });

  it('ends the suspicion with the first reading below the top, so that drying air is seen at once', () => {
    const stuck = tell({ hours: 6, temperature: warmingBy(4), humidity: top });
    const dry = wetSensor(stuck.memory, { timeMs: 6 * HOUR_MS + MINUTE_MS, temperature: 26, humidity: 97 }, limits);
    expect([stuck.flag, dry.flag, dry.saturatedOrWet]).toEqual([3, 1, false]);
  });

  it.each([
    ['half an hour at the top', 0.5, true],
    ['shorter', 0.5 - 1 / 12, false],
  ])('says "saturated or wet" without flagging: %s', (_why, hours, saturatedOrWet) => {
    expect(tell({ hours, temperature: steady, humidity: top })).toMatchObject({ flag: 1, saturatedOrWet });
  });

  it('forgets the stretch over a long silence', () => {
    const stuck = tell({ hours: 6, temperature: warmingBy(4), humidity: top });
    const later = wetSensor(stuck.memory, { timeMs: 7 * HOUR_MS + 1, temperature: 26, humidity: 100 }, limits);
    expect(later).toMatchObject({ flag: 1, saturatedOrWet: false });
  });

  it('learns of warming from temperatures that come without a humidity', () => {
    let tested = wetSensor(emptyWetSensorMemory, { timeMs: 0, temperature: 22, humidity: null }, limits);
    for (let minute = 0; minute <= 240; minute++) {
      const timeMs = minute * MINUTE_MS;
      tested = wetSensor(tested.memory, { timeMs, temperature: null, humidity: 100 }, limits);
      tested = wetSensor(tested.memory, { timeMs, temperature: 22 + minute / 60, humidity: null }, limits);
    }
    const last = wetSensor(tested.memory, { timeMs: 241 * MINUTE_MS, temperature: null, humidity: 100 }, limits);
    expect(last.flag).toBe(3);
  });
});
