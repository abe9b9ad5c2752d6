// What a correction of a batch changes, kept so that the log never hides what stood before.
import type { Batch } from '../../shared/healing/batch.ts';
import { type Correction, correctable } from '../../shared/healing/batch-log.ts';
import { Problem } from '../../shared/problem.ts';
import { utcText } from '../../shared/units.ts';

/** `closedMs` corrects a closing; it never makes or takes back one. */
export type Corrections = Partial<Pick<Batch, Exclude<Correction['field'], 'closedAt'>>> & {
  readonly closedMs?: number;
};

/** Each field that changes, old and new; empty when everything stood so already. */
export function corrections(batch: Batch, fields: Corrections): Correction[] {
  return correctable.flatMap((field) => {
    const [before, after] = [fieldOf(batch, field), fieldOf(fields, field)];
    return after === undefined || after === before ? [] : [{ field, before: before ?? '', after }];
  });
}

/** Problems `bad-input`, `conflict`: a closing time that does not fit with what else has happened. The future is refused elsewhere. */
export function refuseClosing(batch: Batch, closedMs: number | undefined): void {
  if (closedMs === undefined) return;
  if (batch.closedMs === null) throw new Problem('conflict', ({ problems }) => problems.notClosedYet);
  if (closedMs < batch.openedMs)
    throw new Problem('bad-input', ({ problems }) => problems.closedBeforeOpened, {
      faults: [{ where: '/closedAt', reason: ({ problems }) => problems.openedAt(utcText(batch.openedMs)) }],
    });
  const firstMs = Math.min(...batch.holds.map(({ fromMs }) => fromMs), ...batch.moves.map(({ atMs }) => atMs));
  if (closedMs > firstMs)
    throw new Problem('conflict', ({ problems }) => problems.movedBeforeClosing(utcText(firstMs)));
}

function fieldOf(of: Corrections | Batch, field: Correction['field']): string | number | undefined {
  if (field !== 'closedAt') return of[field];
  const { closedMs } = of;
  return closedMs === undefined || closedMs === null ? undefined : utcText(closedMs);
}
