// The figures of batches, kept: each takes a pass over all its readings. A finished batch is measured again only when a late reading came for it.
import type { Batch } from '../../shared/healing/batch.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import type { Clock } from '../clock.ts';
import type { BatchFigures } from '../record/measure-batch.ts';
import { type MeasuredBatch, measureStored } from '../record/measure-stored.ts';
import type { Site } from '../site.ts';
import type { Store } from '../store/store.ts';

/** How long figures stand before it is looked whether they still hold. */
const STANDS_MS = { open: MINUTE_MS, finished: 10 * MINUTE_MS } as const;
/** Batches that are kept: about a year of a nursery with several tents. */
const KEPT = 300;

export interface ExposureBook {
  /** Rejects with the store's Problems. */
  figuresOf(batch: Batch): Promise<BatchFigures>;
  /** The figures if they are kept, however old; else null. */
  keptOf(batchId: string): BatchFigures | null;
}

interface Kept {
  readonly facts: string;
  readonly figures: BatchFigures;
  readonly sources: MeasuredBatch['sources'];
  readonly print: string;
  readonly checkedMs: number;
}

interface BookParts {
  readonly store: Store;
  readonly site: Site;
  readonly clock: Clock;
}

export function createExposureBook({ store, site, clock }: BookParts): ExposureBook {
  const kept = new Map<string, Kept>();
  const running = new Map<string, Promise<BatchFigures>>();
  const keep = (id: string, entry: Kept) => {
    kept.delete(id);
    kept.set(id, entry);
    const oldest = kept.keys().next();
    if (kept.size > KEPT && oldest.done !== true) kept.delete(oldest.value);
  };
  const measure = async (batch: Batch, facts: string): Promise<BatchFigures> => {
    const nowMs = clock.nowMs();
    const known = kept.get(batch.id);
    if (known?.facts === facts && batch.finishedMs !== null && (await printOf(store, known.sources)) === known.print) {
      keep(batch.id, { ...known, checkedMs: nowMs });
      return known.figures;
    }
    const { figures, sources } = await measureStored(store, batch, { zone: site.current().zone, nowMs });
    keep(batch.id, { facts, figures, sources, print: await printOf(store, sources), checkedMs: nowMs });
    return figures;
  };
  return {
    async figuresOf(batch) {
      const facts = JSON.stringify([site.current().zone, batch]);
      const known = kept.get(batch.id);
      const standsMs = batch.finishedMs === null ? STANDS_MS.open : STANDS_MS.finished;
      if (known?.facts === facts && Math.abs(clock.nowMs() - known.checkedMs) < standsMs) return known.figures;
      const key = `${batch.id} ${facts}`;
      const already = running.get(key);
      if (already !== undefined) return already;
      const work = measure(batch, facts).finally(() => running.delete(key));
      running.set(key, work);
      return work;
    },
    keptOf: (id) => kept.get(id)?.figures ?? null,
  };
}

/** How many readings the probes have there and what they add up to, by their roll-up: another reading makes another text. */
async function printOf(store: Pick<Store, 'readings'>, sources: MeasuredBatch['sources']): Promise<string> {
  const prints: string[] = [];
  for (const { probe, fromMs, toMs } of sources) {
    const startMs = Math.floor(fromMs / MINUTE_MS) * MINUTE_MS;
    const bucketMs = (Math.floor((toMs - startMs) / MINUTE_MS) + 1) * MINUTE_MS;
    const [bucket] = await store.readings.buckets(probe, { fromMs: startMs, bucketMs, count: 1 });
    prints.push(JSON.stringify([probe, bucket?.readings, bucket?.bad, bucket?.temperature, bucket?.humidity]));
  }
  return prints.join(' ');
}
