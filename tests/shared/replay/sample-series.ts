// A day of a closed tent as a file would hold it: a reading a minute, warm at noon, with a spike, a silence and a hole.
import type { ClimateSample } from '../../../shared/exposure/day-figures.ts';
import type { LimitSet, ProfileDocument } from '../../../shared/healing/profile.ts';
import type { ReplayResult } from '../../../shared/replay/replay-result.ts';
import { createSeriesReplay, type SeriesSetup } from '../../../shared/replay/replay-series.ts';
import { DAY_MS, MINUTE_MS } from '../../../shared/units.ts';

export const CLOSED_MS = Date.parse('2026-04-07T22:00:00Z');
export const minute = (count: number) => CLOSED_MS + count * MINUTE_MS;

const at = (value: number) => ({ shape: 'constant', value, basis: 'test' }) as const;
const temperature: LimitSet = { low: at(18), high: at(28), highHigh: at(29) };
const humidity: LimitSet = { low: at(85), high: at(100) };

/** One stage of nine days with constant limits. */
export const document: ProfileDocument = {
  name: 'Constant',
  crop: 'any',
  note: '',
  grace: { temperaturePerHour: 1, humidityPerHour: 5, basis: 'test' },
  silenceMinutes: 15,
  stages: [{ stage: 'closed', afterHours: 0, temperature, humidity }],
  endsAfterHours: 216,
  checks: [],
};

export const setup: SeriesSetup = { document, closedMs: CLOSED_MS, zone: 'UTC', silenceMs: 15 * MINUTE_MS };

/** A sample each minute of a day; `temperatureAt` and `humidityAt` by the minute. */
export function everyMinute(
  temperatureAt: (minute: number) => number | null,
  humidityAt: (minute: number) => number | null = (i) => 95 + 0.5 * Math.sin(i / 11),
  minutes = DAY_MS / MINUTE_MS,
): ClimateSample[] {
  return Array.from({ length: minutes }, (_, i) => ({
    timeMs: minute(i),
    temperature: temperatureAt(i),
    humidity: humidityAt(i),
  }));
}

export function replay(samples: Iterable<ClimateSample>, change: Partial<SeriesSetup> = {}): ReplayResult {
  const series = createSeriesReplay({ ...setup, ...change });
  for (const sample of samples) series.add(sample);
  return series.result();
}

/** Breathes a little, so that it is not flat: within a tenth of a degree. */
export const steady = (i: number) => 23 + 0.1 * Math.sin(i / 7);

/** From `fromMinute` at 0.2 °C a minute up to `top`, there for `stay` minutes, and down again as fast. */
export function peak(fromMinute: number, top: number, stay: number): (minute: number) => number {
  const rise = (top - 23) / 0.2;
  return (i) => {
    const up = 23 + 0.2 * (i - fromMinute);
    const down = top - 0.2 * (i - fromMinute - rise - stay);
    return Math.max(steady(i), Math.min(up, top, down));
  };
}
