// Stores the crew's answers to the checks that the plans of the batches have asked so far.
import type { Store } from '../store/store.ts';
import { loadHealing, planBatch } from '../watch/watched-chamber.ts';
import { answerDemoChecks } from './demo-checks.ts';
import { addLog, type StoredNursery } from './store-nursery.ts';

/** Answers, and their lines in the log, as if the crew had given them in the dashboard. */
export async function answerPastChecks(store: Store, { nursery, tents }: StoredNursery, nowMs: number): Promise<void> {
  const [first = '', ...others] = nursery.people.filter(({ role }) => role === 'crew').map(({ name }) => name);
  for (const { batchId } of tents) {
    const batch = await store.batches.get(batchId);
    if (batch === null) throw new Error(`batch ${batchId} was not stored`);
    // House air moves limits, never checks.
    const house = { temperature: null, humidity: null };
    const { checks } = planBatch(await loadHealing(store, batch), nursery.zone, house, nowMs);
    for (const { id, checkId, answer, answeredMs: atMs, person, note } of answerDemoChecks(checks, nowMs, [
      first,
      ...others,
    ])) {
      await store.batches.answer({ batchId, checkId, answer, atMs, person, note });
      await addLog(store, batchId, { kind: 'check', atMs, person, about: { check: { id, checkId, answer } }, note });
    }
  }
}
