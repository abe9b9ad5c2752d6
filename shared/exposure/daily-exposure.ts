// Statistics of every healing day of a batch from one pass over its climate. A healing day is 24 elapsed hours from closing, whatever the
// clocks on the wall do. Memory is one day's running figures and the finished rows.
import { DAY_MS } from '../units.ts';
import { type ClimateSample, type DayExposure, DayFigures } from './day-figures.ts';

export interface DailySpan {
  /** When the chamber was closed: day 1 starts. */
  readonly closedMs: number;
  /** Where the days end, cutting the last; without it they run, as whole days, to the one with the last sample. */
  readonly endMs?: number;
  /** Longest gap between two readings that is still joined, ms. */
  readonly silenceMs: number;
}

export interface DailyExposure {
  /** Takes the next sample in time order; one that is not later than the last is passed over. */
  add(sample: ClimateSample): void;
  /** The days so far, in order. A day without a sample between days that have some is there too, all of it unknown. */
  result(): DayExposure[];
}

/** Starts the figures of a batch. A line over the border of two days is cut there and counted on both sides. */
export function createDailyExposure(span: DailySpan): DailyExposure {
  return new RunningDays(span);
}

/** The days of a whole series in time order; the series is read once and not kept. */
export function dailyExposure(samples: Iterable<ClimateSample>, span: DailySpan): DayExposure[] {
  const days = createDailyExposure(span);
  for (const sample of samples) days.add(sample);
  return days.result();
}

class RunningDays implements DailyExposure {
  readonly #span: DailySpan;
  readonly #endMs: number;
  readonly #finished: DayExposure[] = [];
  #open: DayFigures;
  #lastMs = Number.NEGATIVE_INFINITY;
  /** Newest sample with both values, with a temperature, with a humidity: where the lines into a new day begin. */
  #pair: ClimateSample | null = null;
  #warm: ClimateSample | null = null;
  #moist: ClimateSample | null = null;

  constructor(span: DailySpan) {
    this.#span = span;
    this.#endMs = span.endMs ?? Number.POSITIVE_INFINITY;
    this.#open = this.#startDay(1, span.closedMs);
  }

  add(sample: ClimateSample): void {
    if (sample.timeMs <= this.#lastMs) return;
    this.#lastMs = sample.timeMs;
    this.#open.add(sample);
    while (sample.timeMs > this.#open.toMs && this.#open.toMs < this.#endMs) {
      this.#finished.push(this.#open.result());
      this.#open = this.#startDay(this.#open.day + 1, this.#open.toMs);
      for (const earlier of [this.#pair, this.#warm, this.#moist]) {
        if (earlier !== null) this.#open.add(earlier);
      }
      this.#open.add(sample);
    }
    this.#remember(sample);
  }

  result(): DayExposure[] {
    const { closedMs, endMs } = this.#span;
    const days = [...this.#finished];
    if (this.#lastMs >= closedMs || this.#open.fromMs < (endMs ?? closedMs)) days.push(this.#open.result());
    if (endMs === undefined) return days;
    for (let day = this.#open.day + 1; closedMs + (day - 1) * DAY_MS < endMs; day++) {
      days.push(this.#startDay(day, closedMs + (day - 1) * DAY_MS).result());
    }
    return days;
  }

  #startDay(day: number, fromMs: number): DayFigures {
    const toMs = Math.min(fromMs + DAY_MS, this.#endMs);
    return new DayFigures(day, { fromMs, toMs, silenceMs: this.#span.silenceMs });
  }

  #remember({ timeMs, temperature, humidity }: ClimateSample): void {
    if (temperature !== null && humidity !== null) this.#pair = { timeMs, temperature, humidity };
    if (temperature !== null) this.#warm = { timeMs, temperature, humidity: null };
    if (humidity !== null) this.#moist = { timeMs, temperature: null, humidity };
  }
}
