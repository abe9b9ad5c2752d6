import { expect, onTestFinished, test } from 'vitest';
import type { Phone } from '../../../server/store/store.ts';
import { finding } from '../../../shared/finding.ts';
import { SAMPLE_MS } from '../../support/notice-samples.ts';
import { openDelivery } from '../../support/open-delivery.ts';
import { openOutbox } from '../../support/open-outbox.ts';
import { openPushEndpoint } from '../../support/push-endpoint.ts';

async function openPhone() {
  const push = await openPushEndpoint();
  onTestFinished(push.close);
  const outbox = await openOutbox(SAMPLE_MS);
  const phone = await outbox.addPhone(push.subscribe());
  const { delivery } = await openDelivery(outbox.store, { ms: SAMPLE_MS });
  return { push, phone, delivery, store: outbox.store };
}

const targetOf = ({ id, personId }: Phone) => ({ channel: 'web-push', targetId: id, personId }) as const;

test('a test alert that is taken over says by whom and when', async () => {
  const { push, phone, delivery, store } = await openPhone();
  await expect(delivery.sendTest(targetOf(phone))).resolves.toEqual({
    delivered: true,
    finding: finding('pushTaken', new URL(push.origin).host, 201),
    atMs: SAMPLE_MS,
  });
  expect(push.received).toMatchObject([{ title: 'Test from Takewell', tag: 'test', data: { kind: 'test' } }]);
  expect(push.faults).toEqual([]);
  expect((await store.phones.get(phone.id))?.lastResult).toMatchObject({ key: 'pushTaken' });
});

test('a test alert that fails says why, and the phone stays', async () => {
  const { push, phone, delivery, store } = await openPhone();
  push.answerWith({ status: 503 });
  await expect(delivery.sendTest(targetOf(phone))).resolves.toEqual({
    delivered: false,
    finding: finding('pushInTrouble', 503),
    atMs: SAMPLE_MS,
  });
  expect((await store.phones.get(phone.id))?.lastResult).toEqual(finding('pushInTrouble', 503));
});

test('a phone that takes no more alerts is removed by its test', async () => {
  const { push, phone, delivery, store } = await openPhone();
  push.answerWith({ status: 410 });
  await expect(delivery.sendTest(targetOf(phone))).resolves.toMatchObject({
    delivered: false,
    finding: finding('phoneTakesNoMore', 410),
  });
  await expect(store.phones.get(phone.id)).resolves.toBeNull();
});
