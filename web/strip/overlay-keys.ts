// Which cell of batches laid over each other a key leads to. Pure.

const HOURS_A_DAY = 24;

/** The cell after a key; `undefined` for a key that is none of ours, null where the cross-hair is put away. Begins at the first cell. */
export function cellAfterKey(
  key: string,
  isDay: boolean,
  cell: number | null,
  cells: number,
): number | null | undefined {
  if (cells === 0) return undefined;
  const step = isDay ? HOURS_A_DAY : 1;
  const inside = (next: number) => Math.min(cells - 1, Math.max(0, next));
  if (key === 'ArrowRight') return cell === null ? 0 : inside(cell + step);
  if (key === 'ArrowLeft') return cell === null ? cells - 1 : inside(cell - step);
  if (key === 'Home') return 0;
  if (key === 'End') return cells - 1;
  return key === 'Escape' ? null : undefined;
}
