// Everything in a record that is computed from readings, in one pass over them: counts, gaps, days, excursions. Memory does not grow with their number.
import type { QualityCounts } from '../../shared/api/record.ts';
import type { ClimateSample } from '../../shared/exposure/day-figures.ts';
import type { Excursion } from '../../shared/exposure/excursion-side.ts';
import { createExcursions } from '../../shared/exposure/excursions.ts';
import { type PartExposure, PartFigures } from '../../shared/exposure/part-exposure.ts';
import type { Corridor } from '../../shared/healing/corridor.ts';
import type { Reading } from '../../shared/readings/reading.ts';
import type { Store } from '../store/store.ts';
import { AirTally, type Disagreement, type FilmHours } from './air-tally.ts';
import { type DayPart, dayParts, type StagePart } from './batch-parts.ts';
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
  /** Of a canopy probe with its neighbours. */
  readonly disagreement: Disagreement;
}

export interface DayFigured extends PartExposure {
  readonly day: number;
}

export interface StageFigured extends PartExposure {
  readonly stage: StagePart['stage'];
}

export interface BatchFigures {
  /** In the order of the sources. */
  readonly sources: readonly SourceFigures[];
  readonly days: readonly DayFigured[];
  readonly stages: readonly StageFigured[];
  /** From closing on; null until the chamber is closed. */
  readonly whole: PartExposure | null;
  readonly excursions: readonly Excursion[];
  /** From closing on. */
  readonly film: FilmHours;
}

export interface Measuring {
  readonly sources: readonly ProbeSource[];
  readonly window: RecordWindow;
  readonly closedMs: number | null;
  /** The stages that have begun, cut to the window. */
  readonly stages: readonly StagePart[];
  readonly corridorAt: (atMs: number) => Corridor | null;
}

/** Reads every reading of the sources once. */
export async function measureBatch(store: Pick<Store, 'readings'>, work: Measuring): Promise<BatchFigures> {
  const tallies = new Map(work.sources.map((source) => [source, new SourceTally(source)]));
  const canopy = work.sources.filter(({ place }) => place === 'canopy');
  const series = new ChamberSeries(canopy.map(({ silenceMs }) => silenceMs));
  const climate = new ClimateFigures(work, series.silenceMs);
  const { toMs } = work.window;
  const air = new AirTally(work.sources, { fromMs: work.closedMs ?? toMs, toMs });
  for await (const block of mergeReadings(store, work.sources)) {
    for (const { source, reading } of block) {
      tallies.get(source)?.add(reading);
      air.add(source, reading);
      if (source.place === 'canopy') climate.add(series.add(canopy.indexOf(source), reading));
    }
  }
  climate.add(series.end());
  const sources = [...tallies].map(([source, tally]) => ({
    ...tally.result(),
    disagreement: air.disagreement(source),
  }));
  return { sources, film: air.film(), ...climate.result() };
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

  result(): Omit<SourceFigures, 'disagreement'> {
    return {
      readings: this.#readings,
      lateReadings: this.#late,
      quality: { temperature: this.#temperature, humidity: this.#humidity },
      gaps: this.#gaps.result(),
    };
  }
}

class ClimateFigures {
  readonly #days: readonly { readonly part: DayPart; readonly figures: PartFigures }[];
  readonly #stages: readonly { readonly part: StagePart; readonly figures: PartFigures }[];
  readonly #whole: PartFigures | null;
  readonly #all: readonly PartFigures[];
  readonly #excursions: ReturnType<typeof createExcursions>;

  constructor({ closedMs, stages, window, corridorAt }: Measuring, silenceMs: number) {
    const search = { silenceMs, corridorAt };
    this.#days = dayParts(closedMs, window).map((part) => ({ part, figures: new PartFigures(part, search) }));
    this.#stages = stages.map((part) => ({ part, figures: new PartFigures(part, search) }));
    this.#whole = closedMs === null ? null : new PartFigures({ fromMs: closedMs, toMs: window.toMs }, search);
    const parts = [...this.#days, ...this.#stages].map(({ figures }) => figures);
    this.#all = this.#whole === null ? parts : [...parts, this.#whole];
    this.#excursions = createExcursions({ silenceMs, corridorAt });
  }

  add(samples: readonly ClimateSample[]): void {
    for (const sample of samples) {
      this.#excursions.add(sample);
      for (const figures of this.#all) figures.add(sample);
    }
  }

  result(): Omit<BatchFigures, 'sources' | 'film'> {
    return {
      days: this.#days.map(({ part, figures }) => ({ ...figures.result(), day: part.day })),
      stages: this.#stages.map(({ part, figures }) => ({ ...figures.result(), stage: part.stage })),
      whole: this.#whole?.result() ?? null,
      excursions: this.#excursions.result(),
    };
  }
}
