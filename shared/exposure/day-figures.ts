// The running figures of one healing day: temperature, humidity, and the vapour pressure deficit of both together.
import { vpdKpa } from '../air/vapour.ts';
import { createExposure, type Exposure, type ExposureResult } from './exposure.ts';
import type { PerLimit } from './limit-tally.ts';

/** °C for which minutes and degree-hours are told: thresholds of the report, not limits of the watch. */
const MINUTES_ABOVE = [28, 29];
const DEGREE_HOURS_ABOVE = 28;

/** A half that is null was not measured, or is not to be trusted. */
export interface ClimateSample {
  readonly timeMs: number;
  readonly temperature: number | null;
  readonly humidity: number | null;
}

export type Spread = Pick<ExposureResult, 'mean' | 'min' | 'max'>;

export interface DayExposure {
  /** Healing day, from 1. */
  readonly day: number;
  readonly fromMs: number;
  readonly toMs: number;
  readonly temperature: Spread;
  readonly humidity: Spread;
  /** Minutes strictly above 28 and 29 °C. */
  readonly minutesAbove: PerLimit;
  /** Degree-hours above 28 °C. */
  readonly degreeHoursAbove: PerLimit;
  /** Hours of the day in which temperature or humidity is not known. */
  readonly unknownHours: number;
  /** Integral of the vapour pressure deficit over the known hours, kPa·h; VPD is taken as straight between readings. */
  readonly vpdHours: number;
}

export class DayFigures {
  readonly day: number;
  readonly fromMs: number;
  readonly toMs: number;
  readonly #temperature: Exposure;
  readonly #humidity: Exposure;
  readonly #vpd: Exposure;

  constructor(day: number, span: { readonly fromMs: number; readonly toMs: number; readonly silenceMs: number }) {
    this.day = day;
    this.fromMs = span.fromMs;
    this.toMs = span.toMs;
    this.#temperature = createExposure({ ...span, above: MINUTES_ABOVE });
    this.#humidity = createExposure({ ...span, above: [] });
    this.#vpd = createExposure({ ...span, above: [] });
  }

  /** Takes the next sample in time order; it may lie outside the day, to draw the line over its border. */
  add({ timeMs, temperature, humidity }: ClimateSample): void {
    if (temperature !== null) this.#temperature.add(timeMs, temperature);
    if (humidity !== null) this.#humidity.add(timeMs, humidity);
    if (temperature !== null && humidity !== null) this.#vpd.add(timeMs, vpdKpa(temperature, humidity));
  }

  result(): DayExposure {
    const warmth = this.#temperature.result();
    const air = this.#vpd.result();
    const key = String(DEGREE_HOURS_ABOVE);
    return {
      day: this.day,
      fromMs: this.fromMs,
      toMs: this.toMs,
      temperature: spreadOf(warmth),
      humidity: spreadOf(this.#humidity.result()),
      minutesAbove: warmth.minutesAbove,
      degreeHoursAbove: { [key]: warmth.degreeHoursAbove[key] ?? 0 },
      unknownHours: air.unknownHours,
      vpdHours: air.valueHours,
    };
  }
}

function spreadOf({ mean, min, max }: ExposureResult): Spread {
  return { mean, min, max };
}
