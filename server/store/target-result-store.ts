// The last result of every way alerts can go: one row a target.
import type { Database } from 'better-sqlite3';
import type { TargetResult } from '../../shared/telling/reach.ts';
import type { Store } from './store.ts';
import { guarded } from './store-problem.ts';

type Row = Omit<TargetResult, 'delivered'> & { readonly delivered: number };

/** Writes the last result of a target; call inside the transaction. */
export function prepareTargetResultWriter(db: Database) {
  const put = db.prepare(
    'INSERT OR REPLACE INTO target_results (target_id, delivered, text, at_ms) VALUES (?, ?, ?, ?)',
  );
  return ({ targetId, delivered, text, atMs }: TargetResult): void =>
    void put.run(targetId, Number(delivered), text, atMs);
}

export function openTargetResultStore(db: Database): Store['targetResults'] {
  const all = db.prepare<[], Row>('SELECT target_id targetId, delivered, text, at_ms atMs FROM target_results');
  return {
    all: async () => guarded(() => all.all()).map((row) => ({ ...row, delivered: row.delivered === 1 })),
  };
}
