// What a correction of a batch changes, said so that the log never hides what stood before.
import type { Batch } from '../../shared/healing/batch.ts';

const correctable = ['code', 'scion', 'rootstock', 'method', 'trays', 'plants'] as const;
export type Corrections = Partial<Pick<Batch, (typeof correctable)[number]>>;

/** Each field that changes, old and new, such as `plants: 1000 → 980`; empty when everything stood so already. */
export function corrections(batch: Batch, fields: Corrections): string[] {
  return correctable
    .filter((name) => fields[name] !== undefined && fields[name] !== batch[name])
    .map((name) => `${name}: ${batch[name] === '' ? '(empty)' : batch[name]} → ${fields[name]}`);
}
