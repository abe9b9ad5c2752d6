// The healing days of a stored batch, as its record has them: from the stored flags, over the median of the canopy probes.
import { createDailyExposure } from '../../shared/exposure/daily-exposure.ts';
import type { DayExposure } from '../../shared/exposure/day-figures.ts';
import type { Batch } from '../../shared/healing/batch.ts';
import type { Reading } from '../../shared/readings/reading.ts';
import { ChamberSeries } from '../record/chamber-series.ts';
import type { ProbeSource } from '../record/record-sources.ts';

export class BatchDays {
  readonly #canopy: readonly ProbeSource[];
  readonly #series: ChamberSeries;
  readonly #days: ReturnType<typeof createDailyExposure> | null;

  constructor(
    { closedMs, finishedMs }: Batch,
    sources: readonly ProbeSource[],
    silenceOf: (source: ProbeSource) => number,
  ) {
    this.#canopy = sources.filter(({ place }) => place === 'canopy');
    this.#series = new ChamberSeries(this.#canopy.map(silenceOf));
    const span = { silenceMs: this.#series.silenceMs, ...(finishedMs !== null && { endMs: finishedMs }) };
    this.#days = closedMs === null ? null : createDailyExposure({ closedMs, ...span });
  }

  add(source: ProbeSource, reading: Reading): void {
    const number = this.#canopy.indexOf(source);
    if (number >= 0) for (const sample of this.#series.add(number, reading)) this.#days?.add(sample);
  }

  result(): DayExposure[] {
    for (const sample of this.#series.end()) this.#days?.add(sample);
    return this.#days?.result() ?? [];
  }
}
