// Which cell of batches laid over each other a key leads to. Pure.

const HOURS_A_DAY = 24;

/**
 * The cell after a key, with `isDay` a day further; `undefined` for a key that is none of ours, null where the cross-hair is put away. `hours` of
 * the cells are evenly spaced.
 */
export function cellAfterKey(
  key: string,
  isDay: boolean,
  cell: number | null,
  hours: readonly number[],
): number | null | undefined {
  const last = hours.length - 1;
  if (last < 0) return undefined;
  const cellHours = (hours[1] ?? 1) - (hours[0] ?? 0);
  const step = isDay ? Math.max(1, Math.round(HOURS_A_DAY / cellHours)) : 1;
  if (key === 'ArrowRight') return cell === null ? 0 : Math.min(last, cell + step);
  if (key === 'ArrowLeft') return cell === null ? last : Math.max(0, cell - step);
  if (key === 'Home') return 0;
  if (key === 'End') return last;
  return key === 'Escape' ? null : undefined;
}
