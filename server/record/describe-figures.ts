// The computed figures as they stand in a record: rounded to six decimals, which is far finer than any sensor and free of floating-point noise.
import type { RecordDay, RecordExcursion, RecordSpan, RecordStage } from '../../shared/api/record.ts';
import type { Spread } from '../../shared/exposure/day-figures.ts';
import type { Excursion } from '../../shared/exposure/excursion-side.ts';
import type { PartExposure } from '../../shared/exposure/part-exposure.ts';
import { MINUTE_MS, utcText } from '../../shared/units.ts';
import type { DayFigured, StageFigured } from './measure-batch.ts';

/** The rules of the figures in words, for the record. */
export const figureRules: readonly string[] = [
  'Healing day 1 is the first 24 hours after the chamber was closed, day 2 the next, by elapsed time; the last day ends with the record.',
  'A stage runs from where it began to where the next began, holds and moves included; time after the end of the plan is a part of its own. From ' +
    'closing on the stages, like the days, add up to the whole.',
  'Means are time-weighted: the area under the straight lines between the instants of the chamber climate (trapezoids, cut at the borders of ' +
    'the day), divided by the time those lines cover. Nothing is counted across two instants further apart than the shortest allowed silence ' +
    'of the canopy probes; such time is unknown. Min and max include the value of the line at a border.',
  'Minutes and degree-hours above a limit are exact for the straight lines. VPD-hours are the area under the vapour pressure deficit, computed at ' +
    'each instant from temperature and humidity (Hyland & Wexler over water).',
  'Figures are rounded to six decimals; readings are written with the four decimals they are stored with.',
];

export function describeDay(day: DayFigured): RecordDay {
  return { day: day.day, ...describePart(day) };
}

export function describeStage(stage: StageFigured): RecordStage {
  return { stage: stage.stage, ...describePart(stage) };
}

export function describeExcursion(excursion: Excursion): RecordExcursion {
  const { quantity, side, fromMs, toMs, peak, peakMs, degreeHours, endedByGap, stillOutside } = excursion;
  return {
    quantity,
    side,
    from: utcText(Math.round(fromMs)),
    to: utcText(Math.round(toMs)),
    minutes: minutesBetween(fromMs, toMs),
    peak: round(peak),
    peakAt: utcText(peakMs),
    degreeHours: round(degreeHours),
    endedByGap,
    stillOutside,
  };
}

export function minutesBetween(fromMs: number, toMs: number): number {
  return round((toMs - fromMs) / MINUTE_MS);
}

/** The figures of any part of a batch. */
export function describePart(part: PartExposure): RecordSpan {
  const { temperature, humidity } = part.insideCorridor;
  return {
    from: utcText(part.fromMs),
    to: utcText(part.toMs),
    temperature: roundSpread(part.temperature),
    humidity: roundSpread(part.humidity),
    minutesAbove: roundEach(part.minutesAbove),
    degreeHoursAbove: roundEach(part.degreeHoursAbove),
    unknownHours: round(part.unknownHours),
    vpdKpaHours: round(part.vpdHours),
    insideCorridor: { temperature: roundOrNull(temperature.share), humidity: roundOrNull(humidity.share) },
  };
}

function roundSpread({ mean, min, max }: Spread): Spread {
  return { mean: roundOrNull(mean), min: roundOrNull(min), max: roundOrNull(max) };
}

function roundEach(figures: Readonly<Record<string, number>>): Record<string, number> {
  return Object.fromEntries(Object.entries(figures).map(([limit, value]) => [limit, round(value)]));
}

function roundOrNull(value: number | null): number | null {
  return value === null ? null : round(value);
}

function round(value: number): number {
  return Number(value.toFixed(6));
}
