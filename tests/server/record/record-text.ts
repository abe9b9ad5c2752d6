// What the tests of the record's forms need: the whole text of a stream, and a store that has readings and nothing else.
import type { Store } from '../../../server/store/store.ts';
import type { Reading } from '../../../shared/readings/reading.ts';
import { PEAK_MS } from './sample-batch.ts';

/** A good reading of the sample's afternoon. */
export const oneReading: Reading = {
  timeMs: PEAK_MS,
  temperature: 21,
  humidity: 90,
  temperatureFlag: 1,
  humidityFlag: 1,
  receivedMs: PEAK_MS,
  late: false,
};

export async function collect(pieces: AsyncIterable<string>): Promise<string> {
  let text = '';
  for await (const piece of pieces) text += piece;
  return text;
}

/** Every probe has the same readings. */
export function readingsFrom(readings: Iterable<Reading>): Pick<Store, 'readings'> {
  const none = () => Promise.reject(new Error('only readings are asked for'));
  async function* range() {
    yield* readings;
  }
  const rest = { newest: none, buckets: none, mean: none, timeAbove: none, checkpoints: none, countAll: none };
  return { readings: { range, ...rest } };
}
