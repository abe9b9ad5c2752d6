// Everything in a record that is computed from readings, in one pass over them: counts, gaps, days, excursions. Memory does not grow with their number.
import type { QualityCounts } from '../../shared/api/record.ts';
import { createCorridorShare } from '../../shared/exposure/corridor-share.ts';
import { createDailyExposure } from '../../shared/exposure/daily-exposure.ts';
import { type ClimateSample, type DayExposure, DayFigures } from '../../shared/exposure/day-figures.ts';
import type { Excursion } from '../../shared/exposure/excursion-side.ts';
import { createExcursions } from '../../shared/exposure/excursions.ts';
import type { Corridor } from '../../shared/healing/corridor.ts';
import type { Reading } from '../../shared/readings/reading.ts';
import type { Store } from '../store/store.ts';
import { ChamberSeries } from './chamber-series.ts';
import { countFlag, noCounts } from './count-quality.ts';
import { type Gap, GapFinder } from './find-gaps.ts';
import { mergeReadings } from './merge-readings.ts';
import type { ProbeSource, RecordWindow } from './record-sources.ts';

export interface SourceFigures {
  readonly readings: number;
  readonly lateReadings: number;
  readonly quality: { readonly temperature: QualityCounts; readonly humidity: QualityCounts };
  readonly gaps: readonly Gap[];
}

export interface WholeExposure extends Omit<DayExposure, 'day'> {
  /** Share of the judged time, 0–1. */
  readonly insideCorridor: { readonly temperature: number | null; readonly humidity: number | null };
}

export interface BatchFigures {
  /** In the order of the sources. */
  readonly sources: readonly SourceFigures[];
  readonly days: readonly DayExposure[];
  /** null until the chamber is closed. */
  readonly whole: WholeExposure | null;
  readonly excursions: readonly Excursion[];
}

export interface Measuring {
  readonly sources: readonly ProbeSource[];
  readonly window: RecordWindow;
  readonly closedMs: number | null;
  readonly corridorAt: (atMs: number) => Corridor | null;
}

/** Reads every reading of the sources once. */
export async function measureBatch(store: Pick<Store, 'readings'>, work: Measuring): Promise<BatchFigures> {
  const tallies = new Map(work.sources.map((source) => [source, new SourceTally(source)]));
  const canopy = work.sources.filter(({ place }) => place === 'canopy');
  const series = new ChamberSeries(canopy.map(({ silenceMs }) => silenceMs));
  const climate = new ClimateFigures(work, series.silenceMs);
  for await (const block of mergeReadings(store, work.sources)) {
    for (const { source, reading } of block) {
      tallies.get(source)?.add(reading);
      if (source.place === 'canopy') climate.add(series.add(canopy.indexOf(source), reading));
    }
  }
  climate.add(series.end());
  return { sources: [...tallies.values()].map((tally) => tally.result()), ...climate.result() };
}

class SourceTally {
  #readings = 0;
  #late = 0;
  readonly #temperature = noCounts();
  readonly #humidity = noCounts();
  readonly #gaps: GapFinder;

  constructor(source: ProbeSource) {
    this.#gaps = new GapFinder(source);
  }

  add(reading: Reading): void {
    this.#readings += 1;
    if (reading.late) this.#late += 1;
    countFlag(this.#temperature, reading.temperatureFlag);
    countFlag(this.#humidity, reading.humidityFlag);
    this.#gaps.hear(reading.timeMs);
  }

  result(): SourceFigures {
    return {
      readings: this.#readings,
      lateReadings: this.#late,
      quality: { temperature: this.#temperature, humidity: this.#humidity },
      gaps: this.#gaps.result(),
    };
  }
}

class ClimateFigures {
  readonly #isClosed: boolean;
  readonly #days: ReturnType<typeof createDailyExposure>;
  readonly #whole: DayFigures;
  readonly #excursions: ReturnType<typeof createExcursions>;
  readonly #warmth: ReturnType<typeof createCorridorShare>;
  readonly #moisture: ReturnType<typeof createCorridorShare>;

  constructor({ closedMs, window, corridorAt }: Measuring, silenceMs: number) {
    const span = { fromMs: closedMs ?? window.toMs, toMs: window.toMs, silenceMs };
    this.#isClosed = closedMs !== null;
    this.#days = createDailyExposure({ closedMs: span.fromMs, endMs: span.toMs, silenceMs });
    this.#whole = new DayFigures(1, span);
    this.#excursions = createExcursions({ silenceMs, corridorAt });
    this.#warmth = createCorridorShare({ ...span, bandAt: (ms) => corridorAt(ms)?.temperature ?? null });
    this.#moisture = createCorridorShare({ ...span, bandAt: (ms) => corridorAt(ms)?.humidity ?? null });
  }

  add(samples: readonly ClimateSample[]): void {
    for (const sample of samples) {
      this.#excursions.add(sample);
      if (sample.temperature !== null) this.#warmth.add(sample.timeMs, sample.temperature);
      if (sample.humidity !== null) this.#moisture.add(sample.timeMs, sample.humidity);
      this.#whole.add(sample);
      this.#days.add(sample);
    }
  }

  result(): Omit<BatchFigures, 'sources'> {
    const excursions = this.#excursions.result();
    if (!this.#isClosed) return { days: [], whole: null, excursions };
    const { day: _, ...whole } = this.#whole.result();
    const insideCorridor = { temperature: this.#warmth.result().share, humidity: this.#moisture.result().share };
    return { days: this.#days.result(), whole: { ...whole, insideCorridor }, excursions };
  }
}
