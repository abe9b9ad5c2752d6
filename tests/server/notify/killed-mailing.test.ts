// SIGKILL around an e-mail: before it was handed over, and between handed over and written down. Told once or twice, never not at all, and
// twice only as the same mail.
import { expect, onTestFinished, test } from 'vitest';
import { SAMPLE_MS } from '../../support/notice-samples.ts';
import { stateOf } from '../../support/open-alert-site.ts';
import { openOutbox } from '../../support/open-outbox.ts';
import { openSmtpServer } from '../../support/open-smtp-server.ts';
import { readMail } from '../../support/read-mail.ts';
import { startService } from '../../support/service-run.ts';

async function openKilledMailing() {
  const smtp = await openSmtpServer();
  onTestFinished(smtp.close);
  const outbox = await openOutbox(SAMPLE_MS);
  await outbox.store.people.setDetails('crew-1', { email: 'crew@nursery.example' });
  await outbox.setChannels({ email: smtp.settings({ security: 'none' }) });
  const target = { channel: 'email', targetId: 'email:crew-1', personId: 'crew-1' } as const;
  await outbox.tell({}, 'raised', [target], SAMPLE_MS);
  const start = () => startService('tests/support/mail-delivery-process.ts', {}, [outbox.file, String(SAMPLE_MS)]);
  return { ...outbox, smtp, start };
}

type Site = Awaited<ReturnType<typeof openKilledMailing>>;

/** A second life that is let finish: the notice is written down as sent. */
async function liveOn({ store, start }: Site): Promise<void> {
  start();
  await expect.poll(async () => (await stateOf(store))[0]?.state, { timeout: 30_000 }).toBe('sent');
}

test('killed between handed over and written down: the same mail once more', { timeout: 60_000 }, async () => {
  const site = await openKilledMailing();
  await site.smtp.behave({ as: 'stall-in-data' });
  const first = site.start();
  await site.smtp.whenMailed(1);
  first.kill('SIGKILL');
  await first.ended;
  expect((await stateOf(site.store)).map(({ state }) => state)).toEqual(['waiting']);
  await site.smtp.behave({ as: 'accept' });
  await liveOn(site);
  const ids = site.smtp.mails.map(({ text }) => readMail(text).headers['message-id']?.[0]);
  expect(ids).toHaveLength(2);
  expect(ids[0]).toMatch(/^<.+@.+>$/);
  expect(ids[1]).toBe(ids[0]);
});

test('killed before it was handed over: told by the next life, once', { timeout: 60_000 }, async () => {
  const site = await openKilledMailing();
  await site.smtp.behave({ as: 'stall-before-greeting' });
  const first = site.start();
  await expect.poll(() => site.smtp.connections(), { timeout: 30_000 }).toBe(1);
  first.kill('SIGKILL');
  await first.ended;
  await site.smtp.behave({ as: 'accept' });
  await liveOn(site);
  expect(site.smtp.mails).toHaveLength(1);
});
