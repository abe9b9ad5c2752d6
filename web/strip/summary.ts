// A strip in words, for those who do not see it. Pure.
import { humidityLimitText, humidityText, temperatureText, withTemperature } from '../quantities.ts';
import { words } from '../strings.ts';
import { dayAndTime } from '../when.ts';
import { type Column, eventsOf, gapRuns, type StripData } from './strip-data.ts';

function numbersOf(column: Column): readonly number[] {
  return column.filter((value) => value !== null);
}

function extremes(min: Column, max: Column): readonly [number, number] | null {
  const lows = numbersOf(min);
  const highs = numbersOf(max);
  if (lows.length === 0 || highs.length === 0) return null;
  return [Math.min(...lows), Math.max(...highs)];
}

function measured({ series }: StripData): readonly string[] {
  const { temperature, humidity } = series;
  const temperatureEnds = extremes(temperature.min, temperature.max);
  const humidityEnds = extremes(humidity.min, humidity.max);
  const sentences: string[] = [];
  const last = (column: Column) => numbersOf(column).at(-1) ?? null;
  if (temperatureEnds !== null) {
    const [min, max] = temperatureEnds;
    const lastText = temperatureText(last(temperature.mean));
    sentences.push(words.strip.temperature(temperatureText(min), withTemperature(max), lastText));
  }
  if (humidityEnds !== null) {
    const [min, max] = humidityEnds.map(humidityText);
    sentences.push(words.strip.humidity(min ?? '', max ?? '', humidityText(last(humidity.mean))));
  }
  return sentences.length === 0 ? [words.strip.nothing] : sentences;
}

function unheard(data: StripData): readonly string[] {
  const { nowSec } = data;
  if (nowSec === null) return [];
  const past = data.starts.filter((start) => start < nowSec).length;
  const empty = gapRuns(data).reduce((sum, run) => sum + run.to - run.from, 0);
  const share = past === 0 ? 0 : Math.round((empty / past) * 100);
  return share === 0 ? [] : [words.strip.unknown(share)];
}

/** What the strip shows, as sentences: span, measured ends, alarms, checks, gaps. */
export function summarizeStrip(data: StripData, zone: string): string {
  const checks = eventsOf(data, 'check');
  const answered = checks.filter((check) => check.what === 'yes' || check.what === 'no').length;
  const alarms = eventsOf(data, 'alarm').length;
  const nowMs = (data.nowSec ?? data.fromSec) * 1000;
  return [
    words.strip.span(dayAndTime(data.fromSec * 1000, nowMs, zone), dayAndTime(data.toSec * 1000, nowMs, zone)),
    ...measured(data),
    ...unheard(data),
    ...(alarms === 0 ? [] : [words.strip.alarms(alarms)]),
    ...(checks.length === 0 ? [] : [words.strip.checks(answered, checks.length - answered)]),
  ].join(' ');
}

/** A plan in words: where its humidity band begins and ends. */
export function summarizePlan(data: StripData): string {
  const { low, high } = data.series.corridor.humidity;
  const range = (end: 0 | -1) => `${humidityLimitText(low.at(end) ?? null)}–${humidityLimitText(high.at(end) ?? null)}`;
  return words.strip.plan(range(0), range(-1));
}
