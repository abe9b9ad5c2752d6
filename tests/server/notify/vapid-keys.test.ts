import { expect, test } from 'vitest';
import { openVapidKeys, subjectOf } from '../../../server/notify/vapid-keys.ts';
import { openOutbox } from '../../support/open-outbox.ts';

const owner = { publicUrl: 'https://takewell.example', contact: 'mailto:takewell@nursery.example' };

test('keys are made at the first start and are the same at every later one, for every phone is bound to them', async () => {
  const { store } = await openOutbox(0);
  const first = await openVapidKeys(store.settings, owner);
  expect(Buffer.from(first.publicKey, 'base64url')).toHaveLength(65);
  expect(Buffer.from(first.privateKey, 'base64url')).toHaveLength(32);
  await expect(openVapidKeys(store.settings, owner)).resolves.toEqual(first);
});

test('another store has other keys', async () => {
  const [one, other] = [await openOutbox(0), await openOutbox(0)];
  const [a, b] = [await openVapidKeys(one.store.settings, owner), await openVapidKeys(other.store.settings, owner)];
  expect(a.publicKey).not.toBe(b.publicKey);
});

test('keys that cannot be read are told, never replaced', async () => {
  const { store } = await openOutbox(0);
  const damaged = { publicKey: 'short', privateKey: 'short' };
  await store.settings.put('vapid', damaged);
  await expect(openVapidKeys(store.settings, owner)).rejects.toMatchObject({
    code: 'bad-setting',
    message: expect.stringContaining('restore them from a backup'),
  });
  await expect(store.settings.get('vapid')).resolves.toEqual(damaged);
});

test.each([
  ['an https address is the subject itself', 'https://takewell.example', 'https://takewell.example'],
  ['a path does not belong to it', 'https://takewell.example/tents', 'https://takewell.example'],
  ['http is not accepted by push services: the contact', 'http://192.0.2.7:8420', owner.contact],
  ['localhost is refused by one of them: the contact', 'https://localhost:8420', owner.contact],
  ['no address at all: the contact', '', owner.contact],
])('%s', (_, publicUrl, subject) => {
  expect(subjectOf({ ...owner, publicUrl })).toBe(subject);
});
