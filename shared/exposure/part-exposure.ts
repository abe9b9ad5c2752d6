// The climate figures of several parts of a batch (its days, its stages, the whole) from one pass. What is straight between readings is cut at
// the border of two parts and counted on both sides, so that parts that meet add up to the whole.
import { type Band, type CorridorShareResult, createCorridorShare } from './corridor-share.ts';
import { type ClimateSample, type DayExposure, DayFigures } from './day-figures.ts';

export interface Part {
  readonly fromMs: number;
  readonly toMs: number;
}

/** For how long a quantity was inside its corridor, of the known time for which there was one; `share` 0–1, null while there was none. */
export type InsideCorridor = Pick<CorridorShareResult, 'insideHours' | 'judgedHours' | 'share'>;

export interface PartExposure extends Omit<DayExposure, 'day'> {
  readonly insideCorridor: { readonly temperature: InsideCorridor; readonly humidity: InsideCorridor };
}

export interface PartSearch {
  /** Longest gap between two readings that is still joined, ms. */
  readonly silenceMs: number;
  /** The corridor at an instant; null = none holds. */
  readonly corridorAt: (ms: number) => { readonly temperature: Band; readonly humidity: Band } | null;
}

/** The running figures of one part. */
export class PartFigures {
  readonly #part: Part;
  readonly #silenceMs: number;
  readonly #figures: DayFigures;
  readonly #warmth: ReturnType<typeof createCorridorShare>;
  readonly #moisture: ReturnType<typeof createCorridorShare>;

  constructor({ fromMs, toMs }: Part, { silenceMs, corridorAt }: PartSearch) {
    const span = { fromMs, toMs, silenceMs };
    this.#part = span;
    this.#silenceMs = silenceMs;
    this.#figures = new DayFigures(1, span);
    this.#warmth = createCorridorShare({ ...span, bandAt: (ms) => corridorAt(ms)?.temperature ?? null });
    this.#moisture = createCorridorShare({ ...span, bandAt: (ms) => corridorAt(ms)?.humidity ?? null });
  }

  /** Takes the next sample of the whole series in time order: those too far from the part to be joined to it cost nothing. */
  add(sample: ClimateSample): void {
    const { timeMs, temperature, humidity } = sample;
    if (timeMs < this.#part.fromMs - this.#silenceMs || timeMs > this.#part.toMs + this.#silenceMs) return;
    this.#figures.add(sample);
    if (temperature !== null) this.#warmth.add(timeMs, temperature);
    if (humidity !== null) this.#moisture.add(timeMs, humidity);
  }

  result(): PartExposure {
    const { day: _, ...figures } = this.#figures.result();
    const insideCorridor = {
      temperature: insideOf(this.#warmth.result()),
      humidity: insideOf(this.#moisture.result()),
    };
    return { ...figures, insideCorridor };
  }
}

function insideOf({ insideHours, judgedHours, share }: CorridorShareResult): InsideCorridor {
  return { insideHours, judgedHours, share };
}
