// What a wall screen shows in turn: each chamber that needs someone by itself, then all of them. Pure.
import type { Groups } from './pages/overview-order.ts';

export type WallView =
  | { readonly kind: 'chamber'; readonly id: string }
  | { readonly kind: 'list'; readonly ids: readonly string[]; readonly page: number; readonly pages: number };

/** More than these by themselves, and a round would take minutes: the others stand in lists. */
const mostAlone = 4;

function listsOf(ids: readonly string[], rowsPerPage: number): readonly WallView[] {
  const pages = Math.max(1, Math.ceil(ids.length / rowsPerPage));
  return Array.from({ length: pages }, (_, i): WallView => {
    return { kind: 'list', ids: ids.slice(i * rowsPerPage, (i + 1) * rowsPerPage), page: i + 1, pages };
  });
}

/** The views in their order, worst first. There is always one at least. */
export function wallViews(groups: Groups, rowsPerPage: number): readonly WallView[] {
  const needy = [...groups.alarm, ...groups.soon];
  const all = [...needy, ...groups.fine];
  // One chamber by itself says more than a list of one.
  const alone = all.length === 1 ? all : needy.slice(0, mostAlone);
  const chambers = alone.map((id): WallView => ({ kind: 'chamber', id }));
  if (all.length === 1) return chambers;
  if (needy.length === 0) return listsOf(all, rowsPerPage);
  // Beside those who need someone, the start of the list of all is enough.
  const lists = needy.length > mostAlone ? listsOf(needy, rowsPerPage) : listsOf(all, rowsPerPage).slice(0, 1);
  return [...chambers, ...lists];
}

/** True in the hours of the site in which nobody should be lit up: 21:00 to 06:00. */
export function isNight(hour: number): boolean {
  return hour >= 21 || hour < 6;
}
