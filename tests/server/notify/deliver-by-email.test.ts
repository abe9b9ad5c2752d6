// E-mail in the outbox, with a real mail server: tried until it is taken, and no burden to anybody else while it is not.
import { describe, expect, onTestFinished, test } from 'vitest';
import { createEmail } from '../../../server/notify/channels/email.ts';
import { createWebPush } from '../../../server/notify/channels/web-push.ts';
import { createWebhook } from '../../../server/notify/channels/webhook.ts';
import { openVapidKeys } from '../../../server/notify/vapid-keys.ts';
import { SAMPLE_MS } from '../../support/notice-samples.ts';
import { stateOf } from '../../support/open-alert-site.ts';
import { openDelivery } from '../../support/open-delivery.ts';
import { openOutbox } from '../../support/open-outbox.ts';
import { openSmtpServer } from '../../support/open-smtp-server.ts';
import { openPushEndpoint } from '../../support/push-endpoint.ts';
import { readMail } from '../../support/read-mail.ts';

const MINUTE_MS = 60_000;
const email = { channel: 'email', targetId: 'email:crew-1', personId: 'crew-1' } as const;
const phone = { channel: 'web-push', targetId: 'phone-1', personId: 'crew-1' } as const;

async function openMailSite({ timeoutMs = 5_000 } = {}) {
  const [smtp, push] = [await openSmtpServer(), await openPushEndpoint()];
  onTestFinished(smtp.close);
  onTestFinished(push.close);
  const clock = { ms: SAMPLE_MS };
  const outbox = await openOutbox(SAMPLE_MS);
  await outbox.addPhone(push.subscribe());
  await outbox.store.people.setDetails('crew-1', { email: 'crew@nursery.example' });
  await outbox.setChannels({ email: smtp.settings() });
  const vapid = await openVapidKeys(outbox.store.settings, () => 'mailto:takewell@nursery.example');
  const channels = {
    'web-push': createWebPush({ vapid, allowLocal: true }),
    email: createEmail({ trusted: smtp.certificate, timeoutMs }),
    webhook: createWebhook(),
  };
  const { delivery } = await openDelivery(outbox.store, clock, { channels, closeWithinMs: 0 });
  return { ...outbox, smtp, push, clock, delivery };
}

test('an alarm reaches the person by e-mail, in one thread from beginning to end', async () => {
  const site = await openMailSite();
  await site.tell({}, 'raised', [email], SAMPLE_MS);
  await site.delivery.deliverNotices();
  await site.tell({ state: 'normal', level: 0, returnedMs: SAMPLE_MS }, 'returned', [email], SAMPLE_MS + 1);
  site.clock.ms += MINUTE_MS;
  await site.delivery.deliverNotices();
  const mails = site.smtp.mails.map(({ text }) => readMail(text).headers);
  expect(mails.map(({ subject }) => subject?.[0])).toEqual(['▲ Chamber 2: hot 29.1 °C', '▲ Chamber 2: heat is over']);
  expect(mails[0]?.references).toEqual(mails[1]?.references);
  expect((await stateOf(site.store)).map(({ state }) => state)).toEqual(['sent', 'sent']);
});

test('one that was deferred goes out later, as the same mail', async () => {
  const site = await openMailSite();
  await site.smtp.behave({ as: 'answer', at: 'data', code: 451 });
  await site.tell({}, 'raised', [email], SAMPLE_MS);
  await site.delivery.deliverNotices();
  await expect(stateOf(site.store)).resolves.toMatchObject([{ state: 'waiting' }]);
  await site.smtp.behave({ as: 'accept' });
  site.clock.ms += MINUTE_MS;
  await site.delivery.deliverNotices();
  await expect(stateOf(site.store)).resolves.toMatchObject([{ state: 'sent' }]);
  const ids = site.smtp.mails.map(({ text }) => readMail(text).headers['message-id']?.[0]);
  expect(ids).toHaveLength(2);
  expect(new Set(ids).size).toBe(1);
});

test('one to an address that does not exist is given up, with the reason', async () => {
  const site = await openMailSite();
  await site.smtp.behave({ as: 'answer', at: 'rcpt', code: 550 });
  await site.tell({}, 'raised', [email], SAMPLE_MS);
  await site.delivery.deliverNotices();
  await expect(stateOf(site.store)).resolves.toEqual([
    {
      kind: 'raised',
      state: 'given-up',
      result: 'localhost refuses the address crew@nursery.example (550): correct it',
    },
  ]);
});

describe('a mail server that is dead', () => {
  test('and holds every connection does not keep a push waiting', async () => {
    const site = await openMailSite();
    await site.smtp.behave({ as: 'stall-before-greeting' });
    for (let n = 0; n < 20; n += 1) await site.tell({ id: `alarm-${n}` }, 'raised', [email, phone], SAMPLE_MS);
    site.delivery.wake();
    await site.push.whenAsked(20);
    await site.tell({ id: 'later' }, 'raised', [phone], SAMPLE_MS);
    site.delivery.wake();
    await site.push.whenAsked(21);
    expect(site.smtp.mails).toEqual([]);
    await site.delivery.close();
    const states = (await stateOf(site.store, 'alarm-0')).map(({ state }) => state);
    expect(states.toSorted()).toEqual(['sent', 'waiting']);
  });

  test('is left alone after a few failures, and takes everything when it is back', async () => {
    const site = await openMailSite({ timeoutMs: 1_000 });
    await site.smtp.behave({ as: 'stall-before-greeting' });
    for (let n = 0; n < 20; n += 1) await site.tell({ id: `alarm-${n}` }, 'raised', [email], SAMPLE_MS);
    await site.delivery.deliverNotices();
    expect(site.smtp.connections()).toBeLessThan(10);
    await site.smtp.behave({ as: 'accept' });
    for (const _ of [1, 2]) {
      site.clock.ms += MINUTE_MS;
      await site.delivery.deliverNotices();
    }
    expect(site.smtp.mails).toHaveLength(20);
  });
});
