// The last result of every way alerts can go: one row a target.
import type { Database } from 'better-sqlite3';
import type { TargetResult } from '../../shared/telling/reach.ts';
import { type KeptFinding, keepFinding, takeFinding } from './kept-finding.ts';
import type { Store } from './store.ts';
import { guarded } from './store-problem.ts';

type Row = Pick<TargetResult, 'targetId' | 'atMs'> & KeptFinding & { readonly delivered: number };

export function openTargetResultStore(db: Database): Store['targetResults'] {
  const all = db.prepare<[], Row>(
    'SELECT target_id targetId, delivered, text, finding json, at_ms atMs FROM target_results',
  );
  const put = db.prepare(
    'INSERT OR REPLACE INTO target_results (target_id, delivered, text, finding, at_ms) VALUES (?, ?, ?, ?, ?)',
  );
  return {
    all: async () => guarded(() => all.all()).map(toResult),
    async put({ targetId, delivered, finding, atMs }) {
      const { text, json } = keepFinding(finding);
      guarded(() => put.run(targetId, Number(delivered), text, json, atMs));
    },
  };
}

function toResult({ targetId, delivered, atMs, ...kept }: Row): TargetResult {
  return { targetId, delivered: delivered === 1, finding: takeFinding(kept), atMs };
}
