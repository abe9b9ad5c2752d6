// The chamber climate of a batch as a series in memory, by the rule of the record.
import type { ClimateSample } from '../../shared/exposure/day-figures.ts';
import type { Store } from '../store/store.ts';
import { ChamberSeries } from './chamber-series.ts';
import { mergeReadings } from './merge-readings.ts';
import type { ProbeSource } from './record-sources.ts';

export interface ClimateOfBatch {
  readonly samples: readonly ClimateSample[];
  /** Longest gap between two samples that is still joined, ms. */
  readonly silenceMs: number;
}

/** Reads the canopy probes among the sources once. */
export async function readClimate(
  store: Pick<Store, 'readings'>,
  sources: readonly ProbeSource[],
): Promise<ClimateOfBatch> {
  const canopy = sources.filter(({ place }) => place === 'canopy');
  const series = new ChamberSeries(canopy.map(({ silenceMs }) => silenceMs));
  const samples: ClimateSample[] = [];
  for await (const block of mergeReadings(store, canopy)) {
    for (const { source, reading } of block) samples.push(...series.add(canopy.indexOf(source), reading));
  }
  samples.push(...series.end());
  return { samples, silenceMs: series.silenceMs };
}
