// What the service holds in memory of its store, opened in the order in which one needs the other.
import type { Clock } from './clock.ts';
import { type DutyBook, openDutyBook } from './duty-book.ts';
import { openSite, type Site } from './site.ts';
import type { Store } from './store/store.ts';
import { openTargets, type Targets } from './telling.ts';
import { type OutageBook, openOutageBook } from './watch/outage-book.ts';
import { openProbeBook } from './watch/probe-book.ts';
import { openWatch, type Watch } from './watch/watch.ts';

export interface Books {
  readonly site: Site;
  readonly targets: Targets;
  readonly duty: DutyBook;
  readonly outage: OutageBook;
  readonly watch: Watch;
}

export async function openBooks(store: Store, clock: Clock): Promise<Books> {
  const site = await openSite(store);
  const targets = await openTargets(store);
  const outage = await openOutageBook(store);
  const probes = await openProbeBook(store, clock.nowMs(), outage.memory().setBack);
  const duty = await openDutyBook(store, site, targets.all);
  const watch = await openWatch({ store, site, probes, telling: duty, outage });
  return { site, targets, duty, outage, watch };
}
