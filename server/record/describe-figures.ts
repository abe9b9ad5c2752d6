// The computed figures as they stand in a record: rounded to six decimals, which is far finer than any sensor and free of floating-point noise.
import { airUncertainty, usualProbe } from '../../shared/air/air-uncertainty.ts';
import type { BatchRecord, RecordDay, RecordExcursion, RecordSpan, RecordStage } from '../../shared/api/record.ts';
import type { Spread } from '../../shared/exposure/day-figures.ts';
import type { Excursion } from '../../shared/exposure/excursion-side.ts';
import type { PartExposure } from '../../shared/exposure/part-exposure.ts';
import { HOUR_MS, MINUTE_MS, utcText } from '../../shared/units.ts';
import type { Disagreement, FilmHours } from './air-tally.ts';
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
  'The ± of a mean is that of a usual capacitive probe, 0.2 °C and 2 %RH: an error of the probe does not average out. The ± of the VPD-hours is ' +
    'what comes of it at the means of the part, by first-order propagation, times its known hours.',
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
    plusMinus: plusMinusOf(part),
  };
}

export function describeFilm({ wetHours, dryHours, unknownHours }: FilmHours): BatchRecord['film'] {
  return { wetHours: round(wetHours), dryHours: round(dryHours), unknownHours: round(unknownHours) };
}

export function describeDisagreement({ hours, temperature, humidity }: Disagreement): Disagreement {
  return { hours: round(hours), temperature: roundOrNull(temperature), humidity: roundOrNull(humidity) };
}

function plusMinusOf(part: PartExposure): RecordSpan['plusMinus'] {
  const [temperature, humidity] = [part.temperature.mean, part.humidity.mean];
  const own = {
    temperature: temperature === null ? null : usualProbe.temperature,
    humidity: humidity === null ? null : usualProbe.humidity,
  };
  if (temperature === null || humidity === null) return { ...own, vpdKpaHours: null };
  // VPD does not depend on pressure: any altitude will do.
  const { vpdKpa } = airUncertainty({ temperature, humidity, altitudeM: 0 }, usualProbe);
  const knownHours = Math.max(0, (part.toMs - part.fromMs) / HOUR_MS - part.unknownHours);
  return { ...own, vpdKpaHours: round(vpdKpa * knownHours) };
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
