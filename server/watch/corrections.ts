// What a correction of a batch changes, said so that the log never hides what stood before.
import type { Batch } from '../../shared/healing/batch.ts';
import { Problem } from '../../shared/problem.ts';
import { utcText } from '../../shared/units.ts';

const correctable = ['code', 'scion', 'rootstock', 'method', 'trays', 'plants', 'closedMs'] as const;
type Correctable = (typeof correctable)[number];
/** `closedMs` corrects a closing; it never makes or takes back one. */
export type Corrections = Partial<Pick<Batch, Exclude<Correctable, 'closedMs'>>> & { readonly closedMs?: number };

/** Each field that changes, old and new, such as `plants: 1000 → 980`; empty when everything stood so already. */
export function corrections(batch: Batch, fields: Corrections): string[] {
  return correctable
    .filter((name) => fields[name] !== undefined && fields[name] !== batch[name])
    .map((name) => `${labelOf(name)}: ${say(name, batch[name])} → ${say(name, fields[name])}`);
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

function labelOf(name: Correctable): string {
  return name === 'closedMs' ? 'closed' : name;
}

function say(name: Correctable, value: string | number | null | undefined): string | number {
  if (value === '' || value === null || value === undefined) return '(empty)';
  return name === 'closedMs' && typeof value === 'number' ? utcText(value) : value;
}
