// The profiles that come with the program, put into the store at the first start. A version that is there is never touched.
import { standardProfiles } from '../shared/healing/standard-profiles.ts';
import type { Store } from './store/store.ts';

export async function addStandardProfiles(store: Store, nowMs: number): Promise<void> {
  for (const [index, { id, document }] of standardProfiles.entries()) {
    // A moment apart, so that the list keeps their order.
    if ((await store.profiles.get(id)) === null)
      await store.profiles.addVersion(id, document, nowMs + index, 'Takewell');
  }
}
