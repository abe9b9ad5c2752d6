// The stretches of a batch's climate outside its corridor, found in one pass. Between two readings both the value and the limit are taken as
// straight, so crossing times are exact for constant and straight limits; a limit that jumps between two readings is off by at most their gap.
import type { Band } from './corridor-share.ts';
import type { ClimateSample } from './day-figures.ts';
import { type Excursion, ExcursionSide, type Quantity } from './excursion-side.ts';

export interface ExcursionSearch {
  /** Longest gap between two readings that is still joined, ms; a longer one ends an excursion. */
  readonly silenceMs: number;
  /** The corridor at an instant; null = none holds, which ends an excursion too. Values on a limit are inside. */
  readonly corridorAt: (ms: number) => Readonly<Record<Quantity, Band>> | null;
}

export interface Excursions {
  /** Takes the next sample in time order; one that is not later than the last is passed over. */
  add(sample: ClimateSample): void;
  /** All so far in order of their start, those still going on included. */
  result(): Excursion[];
}

/** Starts the search; memory is constant but for the excursions found. */
export function createExcursions(search: ExcursionSearch): Excursions {
  return new RunningExcursions(search);
}

/** The excursions of a whole series in time order; the series is read once and not kept. */
export function findExcursions(samples: Iterable<ClimateSample>, search: ExcursionSearch): Excursion[] {
  const excursions = createExcursions(search);
  for (const sample of samples) excursions.add(sample);
  return excursions.result();
}

class RunningExcursions implements Excursions {
  readonly #search: ExcursionSearch;
  readonly #sides: Readonly<Record<Quantity, Readonly<Record<keyof Band, ExcursionSide>>>>;
  readonly #found: Excursion[] = [];
  #lastMs = Number.NEGATIVE_INFINITY;

  constructor(search: ExcursionSearch) {
    this.#search = search;
    const sidesOf = (quantity: Quantity) => ({
      low: new ExcursionSide(quantity, 'low', search.silenceMs),
      high: new ExcursionSide(quantity, 'high', search.silenceMs),
    });
    this.#sides = { temperature: sidesOf('temperature'), humidity: sidesOf('humidity') };
  }

  add({ timeMs, temperature, humidity }: ClimateSample): void {
    if (timeMs <= this.#lastMs) return;
    this.#lastMs = timeMs;
    const corridor = this.#search.corridorAt(timeMs);
    this.#follow('temperature', timeMs, temperature, corridor?.temperature ?? null);
    this.#follow('humidity', timeMs, humidity, corridor?.humidity ?? null);
  }

  result(): Excursion[] {
    const going = Object.values(this.#sides).flatMap(({ low, high }) =>
      [low.current() ?? [], high.current() ?? []].flat(),
    );
    return [...this.#found, ...going].sort((a, b) => a.fromMs - b.fromMs);
  }

  #follow(quantity: Quantity, timeMs: number, value: number | null, band: Band | null): void {
    if (value === null) return;
    for (const side of ['low', 'high'] as const) {
      const ended = this.#sides[quantity][side].add(timeMs, value, band === null ? null : band[side]);
      if (ended !== null) this.#found.push(ended);
    }
  }
}
