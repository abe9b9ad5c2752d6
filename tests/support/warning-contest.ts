// Warnings of heat put to the test: a series through the whole replay with one forecaster or another, at a high limit of 28 °C.
import { followHeat, HEAT_AHEAD, lookAhead, noHeatMemory } from '../../shared/forecast/heat-ahead.ts';
import type { WarningFigures } from '../../shared/forecast/judge-warnings.ts';
import type { Measurement } from '../../shared/forecast/local-linear-trend.ts';
import type { LimitSet, ProfileDocument } from '../../shared/healing/profile.ts';
import type { HeatForecaster } from '../../shared/replay/heat-forecaster.ts';
import { createSeriesReplay } from '../../shared/replay/replay-series.ts';
import { HOUR_MS, MINUTE_MS } from '../../shared/units.ts';

export const LIMIT = 28;

const at = (value: number) => ({ shape: 'constant', value, basis: 'test' }) as const;
const humidity: LimitSet = { low: at(0), high: at(100) };
const onlyHeat: ProfileDocument = {
  name: 'Heat only',
  crop: 'any',
  note: '',
  grace: { temperaturePerHour: 1, humidityPerHour: 1, basis: 'test' },
  silenceMinutes: 15,
  stages: [{ stage: 'closed', afterHours: 0, temperature: { low: at(-30), high: at(LIMIT) }, humidity }],
  endsAfterHours: 2000,
  checks: [],
};

/** The figures of a forecaster over a series; without one, of ours. */
export function judgeForecaster(series: readonly Measurement[], forecaster?: HeatForecaster): WarningFigures {
  const replay = createSeriesReplay({
    document: onlyHeat,
    closedMs: series[0]?.timeMs ?? 0,
    zone: 'UTC',
    silenceMs: 15 * MINUTE_MS,
    // Rough rounds: a contest of many forecasters over months would take long at those of the live watch.
    tickMs: 5 * MINUTE_MS,
    ...(forecaster !== undefined && { forecaster }),
  });
  for (const { timeMs, value } of series) replay.add({ timeMs, temperature: value, humidity: 50 });
  return replay.result().ahead;
}

/** Several series one after the other, far enough apart that nothing is carried over. */
export function chain(parts: readonly (readonly Measurement[])[]): Measurement[] {
  let nextMs = 0;
  return parts.flatMap((part) => {
    const shiftMs = nextMs - (part[0]?.timeMs ?? 0);
    nextMs = (part.at(-1)?.timeMs ?? 0) + shiftMs + 6 * HOUR_MS;
    return part.map(({ timeMs, value }) => ({ timeMs: timeMs + shiftMs, value }));
  });
}

/** The series once for each limit, moved so that this limit lies at 28 °C: a forecast knows differences only. */
export function atLimits(series: readonly Measurement[], limits: readonly number[]): Measurement[] {
  return chain(limits.map((limit) => series.map(({ timeMs, value }) => ({ timeMs, value: value - limit + LIMIT }))));
}

export interface BornOut {
  readonly said: number;
  readonly came: number;
  /** How many chances that is. */
  readonly count: number;
}

/**
 * How often the limit was passed within the horizon after a chance of `from` up to `to` had been given, beside the mean of those chances. Of every
 * horizon one chance counts, the first: an afternoon that rests just below the limit is one afternoon, however many readings it has.
 */
export function bornOut(series: readonly Measurement[], from: number, to: number): BornOut {
  const horizonMs = HEAT_AHEAD.horizonMinutes * MINUTE_MS;
  const passed = series.filter(({ value }) => value > LIMIT).map(({ timeMs }) => timeMs);
  let memory = noHeatMemory;
  let [next, count, said, came, freeMs] = [0, 0, 0, 0, Number.NEGATIVE_INFINITY];
  for (const now of series) {
    memory = followHeat(memory, now, LIMIT);
    const chance = lookAhead(memory, LIMIT)?.chance ?? 0;
    if (now.value > LIMIT || chance < from || chance >= to || now.timeMs < freeMs) continue;
    freeMs = now.timeMs + horizonMs;
    while ((passed[next] ?? Infinity) < now.timeMs) next += 1;
    count += 1;
    said += chance;
    if ((passed[next] ?? Infinity) - now.timeMs <= horizonMs) came += 1;
  }
  return { said: said / count, came: came / count, count };
}
