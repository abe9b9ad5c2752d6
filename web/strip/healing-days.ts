// The day cells of a strip: healing day n is the n-th 24 hours after closing. Pure.

const daySec = 86_400;

export interface DayCell {
  readonly day: number;
  readonly fromSec: number;
  readonly toSec: number;
}

/** The day cells that touch the window, at most 400; none while the chamber is not closed. */
export function dayCells(closedSec: number | null, fromSec: number, toSec: number): readonly DayCell[] {
  if (closedSec === null || toSec <= fromSec) return [];
  const first = Math.max(1, Math.floor((fromSec - closedSec) / daySec) + 1);
  const last = Math.min(first + 400, Math.ceil((toSec - closedSec) / daySec));
  const cells: DayCell[] = [];
  for (let day = first; day <= last; day++)
    cells.push({ day, fromSec: closedSec + (day - 1) * daySec, toSec: closedSec + day * daySec });
  return cells;
}
