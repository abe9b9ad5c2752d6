// What a wall screen shows in turn: each chamber that needs someone by itself, then all of them. Pure.
import type { Groups } from './pages/overview-order.ts';

export type WallView =
  | { readonly kind: 'chamber'; readonly id: string }
  | { readonly kind: 'list'; readonly ids: readonly string[]; readonly page: number; readonly pages: number };

/** The views in their order, worst first. There is always one at least. */
export function wallViews(groups: Groups, rowsPerPage: number): readonly WallView[] {
  const all = [...groups.alarm, ...groups.soon, ...groups.fine];
  const pages = Math.max(1, Math.ceil(all.length / rowsPerPage));
  const lists = Array.from({ length: pages }, (_, i): WallView => {
    const ids = all.slice(i * rowsPerPage, (i + 1) * rowsPerPage);
    return { kind: 'list', ids, page: i + 1, pages };
  });
  // One chamber by itself says more than a list of one.
  const alone = all.length === 1 ? all : [...groups.alarm, ...groups.soon];
  const chambers = alone.map((id): WallView => ({ kind: 'chamber', id }));
  if (all.length === 1) return chambers;
  // While somebody is needed, only the worst of the list is shown between: a screen must come round soon.
  return chambers.length === 0 ? lists : [...chambers, ...lists.slice(0, 1)];
}

/** True in the hours of the site in which nobody should be lit up: 21:00 to 06:00. */
export function isNight(hour: number): boolean {
  return hour >= 21 || hour < 6;
}
