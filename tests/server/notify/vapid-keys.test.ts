import { expect, test } from 'vitest';
import { changeVapidKeys, openVapidKeys, subjectOf } from '../../../server/notify/vapid-keys.ts';
import { openOutbox } from '../../support/open-outbox.ts';

const subject = () => 'mailto:takewell@nursery.example';

test('keys are made at the first start and are the same at every later one, for every phone is bound to them', async () => {
  const { store } = await openOutbox(0);
  const first = await openVapidKeys(store.settings, subject);
  expect(Buffer.from(first.publicKey, 'base64url')).toHaveLength(65);
  expect(Buffer.from(first.pairOf(null)?.privateKey ?? '', 'base64url')).toHaveLength(32);
  const again = await openVapidKeys(store.settings, subject);
  expect(again.pairOf(null)).toEqual(first.pairOf(null));
});

test('another store has other keys', async () => {
  const [one, other] = [await openOutbox(0), await openOutbox(0)];
  const [a, b] = [await openVapidKeys(one.store.settings, subject), await openVapidKeys(other.store.settings, subject)];
  expect(a.publicKey).not.toBe(b.publicKey);
});

test('keys that cannot be read are told, never replaced', async () => {
  const { store } = await openOutbox(0);
  const damaged = { publicKey: 'short', privateKey: 'short' };
  await store.settings.put('vapid', damaged);
  await expect(openVapidKeys(store.settings, subject)).rejects.toMatchObject({
    code: 'bad-setting',
    message: expect.stringContaining('restore them from a backup'),
  });
  await expect(store.settings.get('vapid')).resolves.toEqual(damaged);
});

test('changed keys leave the earlier ones to the phones that subscribed with them', async () => {
  const { store } = await openOutbox(0);
  const before = await openVapidKeys(store.settings, subject);
  const made = await changeVapidKeys(store.settings, false);
  const after = await openVapidKeys(store.settings, subject);
  expect(after.publicKey).toBe(made);
  expect(made).not.toBe(before.publicKey);
  for (const key of [null, before.publicKey]) expect(after.pairOf(key)).toEqual(before.pairOf(null));
  expect(after.isReceipt('a notice', before.receiptOf('a notice'))).toBe(true);
});

test('changed keys without the earlier ones leave nothing to sign with for the phones of before', async () => {
  const { store } = await openOutbox(0);
  const before = await openVapidKeys(store.settings, subject);
  await changeVapidKeys(store.settings, true);
  const after = await openVapidKeys(store.settings, subject);
  expect(after.pairOf(before.publicKey)).toBeNull();
});

test('only the receipt of a notice is its receipt', async () => {
  const { store } = await openOutbox(0);
  const keys = await openVapidKeys(store.settings, subject);
  expect(keys.isReceipt('one', keys.receiptOf('one'))).toBe(true);
  expect(keys.isReceipt('one', keys.receiptOf('other'))).toBe(false);
  expect(keys.isReceipt('one', '')).toBe(false);
});

const nothing = { contact: null, publicUrl: null, sender: null };
test.each([
  [
    'the contact as set',
    { contact: 'mailto:us@nursery.example', publicUrl: 'https://takewell.example' },
    'mailto:us@nursery.example',
  ],
  [
    'an https address is the subject itself, without its path',
    { publicUrl: 'https://takewell.example/tents' },
    'https://takewell.example',
  ],
  [
    'http is not accepted by push services: the sender of mails',
    { publicUrl: 'http://192.0.2.7:8420', sender: 'a@nursery.example' },
    'mailto:a@nursery.example',
  ],
  [
    'localhost is refused by one of them',
    { publicUrl: 'https://localhost:8420', sender: 'a@nursery.example' },
    'mailto:a@nursery.example',
  ],
  ['nothing at all: a name that says so', {}, 'mailto:not-set@takewell.invalid'],
])('%s', (_, contacts, expected) => {
  expect(subjectOf({ ...nothing, ...contacts })).toBe(expected);
});
