// Many chambers in trouble at once: one notice for all of them, counted anew from the stored alarms after a restart.
import { expect, it, onTestFinished } from 'vitest';
import { MINUTE_MS, SECOND_MS } from '../../../shared/units.ts';
import { openTestApp, type TestApp } from '../../support/open-test-app.ts';
import { createTestClock } from '../../support/test-clock.ts';
import { openWebhookReceiver } from '../../support/webhook-receiver.ts';

const NOON_MS = Date.UTC(2026, 2, 1, 12);

async function openNursery(chambers: number) {
  const clock = createTestClock(NOON_MS);
  const receiver = await openWebhookReceiver();
  onTestFinished(receiver.close);
  let test: TestApp = await openTestApp({ clock });
  const { api } = test;
  await api.put('/channels', { webhooks: [{ name: 'Hook', url: receiver.url, allowLocal: true }] });
  for (let number = 1; number <= chambers; number += 1) {
    const { body } = await api.post<{ id: string }>('/chambers', { name: `Tent ${number}` });
    await api.post('/probes', { nodeId: 'n1', address: `t${number}`, chamberId: body.id, place: 'canopy' });
    const batch = { chamberId: body.id, profileId: 'tomato-common-practice', code: `B-${number}`, plants: 100 };
    await api.post('/batches', { ...batch, closedAt: '2026-02-28T06:00:00Z' });
  }
  /** Every tent from the first to the last of these measures this. */
  const measure = async (from: number, to: number, temperature: number) => {
    const numbers = Array.from({ length: to - from + 1 }, (_, index) => from + index);
    const pack = numbers.map((number) => ({ probe: `t${number}`, temperature, humidity: 95 }));
    const payload = new TextEncoder().encode(JSON.stringify(pack));
    await test.app.intake.push({
      topic: 'takewell/v1/n1/readings',
      payload,
      arrivalMs: clock.nowMs(),
      retained: false,
    });
  };
  return {
    clock,
    measure,
    async heat(from: number, to: number, temperature: number) {
      await measure(from, to, temperature);
      clock.advance(MINUTE_MS);
      await measure(from, to, temperature);
    },
    async restart() {
      await test.app.close();
      test = await openTestApp({ clock, folder: test.folder });
    },
    async told() {
      await test.app.deliver();
      return receiver.calls.map(({ message }) => message['kind']);
    },
    calls: receiver.calls,
  };
}

it('eleven alarms in one turn are told in one notice that opens the list', async () => {
  const nursery = await openNursery(11);
  await nursery.heat(1, 11, 28.5);
  expect(await nursery.told()).toEqual(['flood']);
  expect(nursery.calls[0]?.message).toMatchObject({
    ...{ sentence: 'Many alarms at once: 11 stand', alarm: null, chamber: null },
    url: expect.stringMatching(/\/alarms$/),
  });
});

it('ten are told one by one, the eleventh in one with what comes after, and the critical ones always', async () => {
  const nursery = await openNursery(13);
  await nursery.heat(1, 10, 28.5);
  expect(await nursery.told()).toEqual(Array(10).fill('raised'));
  await nursery.restart();
  await nursery.heat(11, 12, 28.5);
  expect((await nursery.told()).slice(10)).toEqual(['flood']);
  await nursery.measure(13, 13, 30);
  nursery.clock.advance(30 * SECOND_MS);
  await nursery.measure(13, 13, 30);
  expect((await nursery.told()).slice(11)).toEqual(['raised']);
});
