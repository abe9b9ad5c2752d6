// The outbox on a real SQLite file, real HTTP on both channels; only the clock is turned by hand.
import { expect, test } from 'vitest';
import { finding } from '../../../shared/finding.ts';
import { standardProfiles } from '../../../shared/healing/standard-profiles.ts';
import { SAMPLE_MS } from '../../support/notice-samples.ts';
import { openAlertSite, phoneOne, phoneTwo, stateOf, webhook } from '../../support/open-alert-site.ts';

test('an alarm reaches every phone and the webhook, and the outbox knows by whom it was taken', async () => {
  const site = await openAlertSite();
  const drafts = await site.tell({}, 'raised', [phoneOne, phoneTwo, webhook], SAMPLE_MS);
  await site.delivery.deliverNotices();
  expect(site.push.received.map((one) => one.title)).toEqual(Array(2).fill('▲ Chamber 2: hot 29.1 °C'));
  expect(site.push.faults).toEqual([]);
  expect(site.receiver.calls).toMatchObject([{ noticeId: drafts[2]?.id, isSignatureRight: true }]);
  const accepted = `accepted by ${new URL(site.push.origin).host} (201)`;
  expect((await stateOf(site.store)).map((one) => `${one.state}: ${one.result}`)).toEqual([
    `sent: ${accepted}`,
    `sent: ${accepted}`,
    'sent: accepted by the webhook (204)',
  ]);
  await expect(site.store.phones.get('phone-1')).resolves.toMatchObject({
    lastResult: finding('pushTaken', new URL(site.push.origin).host, 201),
    lastResultMs: SAMPLE_MS,
  });
});

test('a wake after the commit is enough', async () => {
  const site = await openAlertSite();
  await site.tell({}, 'raised', [phoneOne], SAMPLE_MS);
  site.delivery.wake();
  await site.push.whenAsked(1);
  await site.delivery.close();
  expect(await stateOf(site.store)).toMatchObject([{ state: 'sent' }]);
});

test('however often it is woken, and however many passes are asked for at once, each notice is sent once', async () => {
  const site = await openAlertSite();
  for (let n = 0; n < 30; n += 1) {
    await site.tell({ id: `alarm-${n}` }, 'raised', [phoneOne, webhook], SAMPLE_MS);
    site.delivery.wake();
  }
  await Promise.all([1, 2, 3].map(() => site.delivery.deliverNotices()));
  expect(new Set(site.push.received.map((one) => one.tag)).size).toBe(30);
  expect(site.push.received).toHaveLength(30);
  expect(site.receiver.calls).toHaveLength(30);
});

test('more notices than are read at once all go out', async () => {
  const site = await openAlertSite();
  const drafts = Array.from({ length: 450 }, (_, n) => ({ id: `n-${n}`, alarmId: `alarm-${n}` }));
  for (const { alarmId } of drafts) await site.tell({ id: alarmId }, 'raised', [webhook], SAMPLE_MS);
  await site.delivery.deliverNotices();
  expect(site.receiver.calls).toHaveLength(450);
});

test('the message names the batch', async () => {
  const site = await openAlertSite();
  const profile = standardProfiles[0];
  if (profile === undefined) throw new Error('there is no standard profile');
  const { id, version } = await site.store.profiles.addVersion('healing', profile.document, SAMPLE_MS, 'crew-1');
  await site.store.batches.add({
    id: 'b1',
    code: 'T-117',
    chamberId: 'c2',
    profileId: id,
    profileVersion: version,
    scion: 'scion',
    rootstock: 'rootstock',
    method: 'splice',
    trays: 10,
    plants: 1_000,
    openedMs: SAMPLE_MS,
    closedMs: null,
    finishedMs: null,
    takenPlants: null,
    holds: [],
    moves: [],
  });
  await site.tell({ batchId: 'b1' }, 'raised', [phoneOne, webhook], SAMPLE_MS);
  await site.delivery.deliverNotices();
  expect(site.push.received[0]?.body).toContain('Batch T-117.');
  expect(site.receiver.calls[0]?.message.batch).toEqual({ id: 'b1', code: 'T-117' });
});

test('the message names the probe as it is called', async () => {
  const site = await openAlertSite();
  const number = 7;
  const probe = {
    number,
    id: 'p7',
    nodeId: 'n1',
    address: 'a',
    name: 'Canopy left',
    silenceMs: 1,
    outOfService: false,
  };
  await site.store.probes.addNode({
    id: 'n1',
    status: 'online',
    statusMs: null,
    passwordHash: null,
    discoveredMs: SAMPLE_MS,
  });
  await site.store.probes.add({ ...probe, discoveredMs: SAMPLE_MS, placement: null });
  await site.tell({ rule: 'silent-probe', probeId: 'p7' }, 'raised', [phoneOne], SAMPLE_MS);
  await site.delivery.deliverNotices();
  expect(site.push.received[0]?.body).toContain('Probe Canopy left.');
});
