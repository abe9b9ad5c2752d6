// The memories of the quality tests that are kept from time to time, written in the transaction of the readings they belong to.
import type { Database } from 'better-sqlite3';
import type { ProbeQualityMemory } from '../../shared/readings/quality/judge-reading.ts';
import type { Commit, StoredCheckpoint } from './store.ts';
import { guarded } from './store-problem.ts';

interface Row {
  readonly slotMs: number;
  readonly memory: string;
}

/** Writes one transaction's worth; call inside the transaction. */
export function prepareCheckpointWriter(db: Database) {
  const put = db.prepare('INSERT OR REPLACE INTO quality_checkpoints (probe, slot_ms, memory) VALUES (?, ?, ?)');
  return ({ checkpoints = [] }: Pick<Commit, 'checkpoints'>): void => {
    for (const { probe, slotMs, memory } of checkpoints) put.run(probe, slotMs, JSON.stringify(memory));
  };
}

/** Prepares the question for the newest that is no younger than an instant, and all younger ones. */
export function prepareCheckpoints(db: Database): (probe: number, atMs: number) => Promise<StoredCheckpoint[]> {
  const list = db.prepare<[{ probe: number; atMs: number }], Row>(
    `SELECT slot_ms slotMs, memory FROM quality_checkpoints WHERE probe = @probe AND slot_ms >=
       coalesce((SELECT max(slot_ms) FROM quality_checkpoints WHERE probe = @probe AND slot_ms <= @atMs), @atMs)
     ORDER BY slot_ms`,
  );
  return async (probe, atMs) =>
    guarded(() => list.all({ probe, atMs })).map(({ slotMs, memory }) => ({
      slotMs,
      memory: JSON.parse(memory) as ProbeQualityMemory,
    }));
}
