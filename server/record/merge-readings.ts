// The readings of a batch from all its probes as one series in time order, block by block: memory does not grow with their number.
import { type Calibration, calibrate } from '../../shared/readings/calibration.ts';
import type { Reading } from '../../shared/readings/reading.ts';
import type { Store } from '../store/store.ts';

/** One probe for as long as it stood in one place, cut to the time of the batch. Both ends are included. */
export interface ReadingSource {
  readonly probe: number;
  readonly fromMs: number;
  readonly toMs: number;
  /** What corrects its readings, in the order in which the entries begin. */
  readonly calibrations: readonly Calibration[];
}

export interface SourcedReading<Source extends ReadingSource> {
  readonly source: Source;
  /** Calibrated. */
  readonly reading: Reading;
  /** As it is stored; the same object where the probe has no calibration. */
  readonly raw: Reading;
}

/** Readings handed on at a time, and read ahead of each probe: a turn of the event loop a reading would cost more than all the rest. */
const BLOCK = 512;
const AHEAD = 256;

/** Merges the sources into blocks of a few hundred readings. Readings of the same instant come in the order of the sources. */
export async function* mergeReadings<Source extends ReadingSource>(
  store: Pick<Store, 'readings'>,
  sources: readonly Source[],
): AsyncGenerator<SourcedReading<Source>[]> {
  const feeds = sources.map((source) => new Feed(store, source));
  for (const feed of feeds) await feed.fill();
  let open = feeds.filter(({ head }) => head !== null);
  let block: SourcedReading<Source>[] = [];
  for (let feed = earliest(open); feed?.head; feed = earliest(open)) {
    block.push({ source: feed.source, reading: calibrate(feed.head, feed.source.calibrations), raw: feed.head });
    feed.step();
    if (feed.head === null) await feed.fill();
    if (feed.head === null) open = open.filter((other) => other !== feed);
    if (block.length < BLOCK) continue;
    yield block;
    block = [];
  }
  if (block.length > 0) yield block;
}

/** One source, read a little ahead. */
class Feed<Source extends ReadingSource> {
  readonly source: Source;
  /** The next reading; null when what was read ahead is used up. */
  head: Reading | null = null;
  readonly #rest: AsyncIterator<Reading>;
  #ahead: Reading[] = [];
  #next = 0;

  constructor(store: Pick<Store, 'readings'>, source: Source) {
    this.source = source;
    this.#rest = store.readings.range(source.probe, source.fromMs, source.toMs)[Symbol.asyncIterator]();
  }

  step(): void {
    this.#next += 1;
    this.head = this.#ahead[this.#next] ?? null;
  }

  /** Reads on; the head stays null at the end of the source. */
  async fill(): Promise<void> {
    this.#ahead = [];
    this.#next = 0;
    while (this.#ahead.length < AHEAD) {
      const next = await this.#rest.next();
      if (next.done === true) break;
      this.#ahead.push(next.value);
    }
    this.head = this.#ahead[0] ?? null;
  }
}

function earliest<Source extends ReadingSource>(feeds: readonly Feed<Source>[]): Feed<Source> | undefined {
  let best = feeds[0];
  for (const feed of feeds) {
    if ((feed.head?.timeMs ?? Infinity) < (best?.head?.timeMs ?? Infinity)) best = feed;
  }
  return best;
}
