// The demo's past, from an empty data folder to a nursery with days of readings, alarms, logs and answered checks behind it.
import { databaseFile } from '../settings.ts';
import { openStore } from '../store/open-store.ts';
import { answerPastChecks } from './answer-past-checks.ts';
import { describeDemoNursery } from './demo-scenario.ts';
import { replayPast } from './replay-past.ts';
import { type RunningTents, startTents } from './start-tents.ts';
import { type StoredNursery, storeNursery, storePeople } from './store-nursery.ts';

export interface StoredPast {
  readonly stored: StoredNursery;
  /** The tents as they stand, to go on from. */
  readonly tents: RunningTents;
}

/** Fills the database of an empty data folder with the nursery as it stands at `nowMs`, and closes it again. */
export async function storePast(dataDir: string, nowMs: number): Promise<StoredPast> {
  const store = openStore({ file: databaseFile(dataDir), nowMs });
  try {
    const nursery = describeDemoNursery(nowMs);
    const stored = await storeNursery(store, nursery);
    await storePeople(store, nursery, stored.fromMs);
    const tents = startTents(stored);
    await answerPastChecks(store, stored, nowMs);
    await replayPast(store, stored, tents, nowMs);
    return { stored, tents };
  } finally {
    await store.close();
  }
}
