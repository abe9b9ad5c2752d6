// The last result of every way alerts can go: one row a target.
import type { Database } from 'better-sqlite3';
import type { TargetResult } from '../../shared/telling/reach.ts';
import { type KeptFinding, keepFinding, takeFinding } from './kept-finding.ts';
import type { Store } from './store.ts';
import { guarded } from './store-problem.ts';

type Row = Pick<TargetResult, 'targetId' | 'atMs'> & KeptFinding & { readonly delivered: number };

/** Writes the last result of a target; call inside the transaction. */
export function prepareTargetResultWriter(db: Database) {
  const put = db.prepare(
    'INSERT OR REPLACE INTO target_results (target_id, delivered, text, finding, at_ms) VALUES (?, ?, ?, ?, ?)',
  );
  return ({ targetId, delivered, finding, atMs }: TargetResult): void => {
    const { text, json } = keepFinding(finding);
    put.run(targetId, Number(delivered), text, json, atMs);
  };
}

export function openTargetResultStore(db: Database): Store['targetResults'] {
  const all = db.prepare<[], Row>(
    'SELECT target_id targetId, delivered, text, finding json, at_ms atMs FROM target_results',
  );
  return { all: async () => guarded(() => all.all()).map(toResult) };
}

function toResult({ targetId, delivered, atMs, ...kept }: Row): TargetResult {
  return { targetId, delivered: delivered === 1, finding: takeFinding(kept), atMs };
}
