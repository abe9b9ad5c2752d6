// The chambers that are watched, in memory: each with its open batch, its alarms and its trends, read anew when somebody changed it.
import { SERVICE_ID, SERVICE_NAME } from '../../shared/alarms/alarm.ts';
import { type ChamberWatch, emptyWatch } from '../../shared/alarms/watch-state.ts';
import type { Store } from '../store/store.ts';
import { noTrends, type Trends } from './trends.ts';
import { loadHealing, type WatchedChamber } from './watched-chamber.ts';

export interface ChamberBook {
  all(): WatchedChamber[];
  get(id: string): WatchedChamber | undefined;
  /** Of a chamber in use or retired; past batches and alarms name it. */
  name(id: string): string;
  /** Keeps what a turn made of a chamber; one that is gone meanwhile stays gone. */
  keep(watch: ChamberWatch, trends: Trends): void;
  /** Reads a chamber anew from the store after somebody changed it or its batch. */
  reload(chamberId: string): Promise<void>;
}

/** Loads the chambers in use. `memories`: alarms, pending delays and shelves as they were stored, by chamber. */
export async function openChamberBook(store: Store, memories: ReadonlyMap<string, ChamberWatch>): Promise<ChamberBook> {
  const chambers = new Map<string, WatchedChamber>();
  const names = new Map((await store.chambers.listWithRetired()).map(({ id, name }) => [id, name]));

  // A chamber that was retired may come back: with what it was left with, not with what was stored at the start.
  const left = new Map(memories);

  const reload = async (chamberId: string) => {
    const chamber = (await store.chambers.list()).find(({ id }) => id === chamberId);
    if (chamber === undefined) {
      left.set(chamberId, chambers.get(chamberId)?.watch ?? emptyWatch(chamberId));
      chambers.delete(chamberId);
      return;
    }
    names.set(chamber.id, chamber.name);
    const batch = (await store.batches.open()).find((one) => one.chamberId === chamberId);
    const healing = batch === undefined ? null : await loadHealing(store, batch);
    const watch = chambers.get(chamberId)?.watch ?? left.get(chamberId) ?? emptyWatch(chamberId);
    const trends = chambers.get(chamberId)?.trends ?? noTrends;
    chambers.set(chamberId, { chamber, healing, watch, trends });
  };
  for (const { id } of await store.chambers.list()) await reload(id);

  return {
    all: () => [...chambers.values()],
    get: (id) => chambers.get(id),
    name: (id) => (id === SERVICE_ID ? SERVICE_NAME : names.get(id)) ?? 'removed chamber',
    keep(watch, trends) {
      const known = chambers.get(watch.chamberId);
      if (known !== undefined) chambers.set(watch.chamberId, { ...known, watch, trends });
    },
    reload,
  };
}
