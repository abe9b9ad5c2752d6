// A tent with its probe and a batch on its second healing day, a webhook that listens, and a clock that the test turns.
import { expect, onTestFinished } from 'vitest';
import { HOUR_MS, utcText } from '../../shared/units.ts';
import { answerChecks } from './answer-checks.ts';
import { openTestApp, type TestApp, type TestAppOptions } from './open-test-app.ts';
import { createTestClock, type TestClock } from './test-clock.ts';
import { openWebhookReceiver } from './webhook-receiver.ts';

export interface HealingSite extends TestApp {
  readonly clock: TestClock;
  readonly chamberId: string;
  readonly batchId: string;
  /** Number of the canopy probe: node `n1`, no address. */
  readonly probe: number;
  /** What the webhook has been told so far, as `kind rule`, in order. */
  told(): Promise<string[]>;
}

export interface HealingSiteOptions extends TestAppOptions {
  readonly nowMs: number;
  /** When the batch was opened and the tent closed; 30 h before now. */
  readonly closedMs?: number;
}

/** Opens it through the HTTP interface, as a manager would. */
export async function openHealingSite({ nowMs, closedMs, ...options }: HealingSiteOptions): Promise<HealingSite> {
  const receiver = await openWebhookReceiver();
  onTestFinished(receiver.close);
  const startMs = closedMs ?? nowMs - 30 * HOUR_MS;
  // The probe stands there from the beginning: its readings of that time belong to the batch.
  const clock = createTestClock(startMs);
  const test = await openTestApp({ ...options, clock });
  const { api, app } = test;
  const chamber = await api.post<{ id: string }>('/chambers', { name: 'Tent 1' });
  const chamberId = chamber.body.id;
  await api.post('/probes', { nodeId: 'n1', address: '', chamberId, place: 'canopy' });
  const wanted = { chamberId, profileId: 'tomato-common-practice', code: 'B-1', plants: 100 };
  const batch = await api.post<{ id: string }>('/batches', { ...wanted, closedAt: utcText(startMs) });
  expect(batch.status).toBe(201);
  await api.put('/channels', { webhooks: [{ name: 'Hook', url: receiver.url, allowLocal: true }] });
  await answerChecks(api, batch.body.id, nowMs + 6 * HOUR_MS);
  clock.set(nowMs);
  return {
    ...test,
    clock,
    chamberId,
    batchId: batch.body.id,
    probe: (await app.store.probes.list())[0]?.number ?? 0,
    async told() {
      await app.deliver();
      return receiver.calls.map(({ message }) => `${message['kind']} ${(message['alarm'] as { rule: string }).rule}`);
    },
  };
}
