// The `test-alert` command, with a real mail server and a real webhook: what was taken over is 0, what was not is 1, and it says why. Beside a
// store that stays open, as the service keeps it.
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openStore } from '../../../server/store/open-store.ts';
import { CHANNELS_SETTING, type Channels } from '../../../shared/api/channels.ts';
import { openSmtpServer } from '../../support/open-smtp-server.ts';
import { openPushEndpoint } from '../../support/push-endpoint.ts';
import { readMail } from '../../support/read-mail.ts';
import { openWebhookReceiver, webhookTo } from '../../support/webhook-receiver.ts';
import { runTakewell, temporaryFolder } from './run-takewell.ts';

async function openSite(channels: Partial<Channels> = {}) {
  const dataDir = temporaryFolder();
  const store = openStore({ file: join(dataDir, 'takewell.sqlite'), nowMs: 0 });
  onTestFinished(() => store.close());
  for (const name of ['Noor', 'Sam'])
    await store.people.add({ id: name.toLowerCase(), name, role: 'crew', passwordHash: 'none', createdMs: 0 });
  await store.people.setDetails('noor', { email: 'noor@nursery.example' });
  await store.settings.put(CHANNELS_SETTING, channels);
  const run = async (args: string[], env: Record<string, string> = {}) => {
    const outcome = await runTakewell(['test-alert', ...args], { dataDir, env });
    return { ...outcome, results: args.includes('--json') ? JSON.parse(outcome.stdout).results : null };
  };
  return { store, run };
}

async function openMailSite() {
  const smtp = await openSmtpServer();
  onTestFinished(smtp.close);
  const site = await openSite({ email: smtp.settings({ security: 'none' }) });
  return { ...site, smtp };
}

async function openHook() {
  const receiver = await openWebhookReceiver('secret');
  onTestFinished(receiver.close);
  return receiver;
}

describe('by e-mail', () => {
  it('says that the mail server has it, and the mail is one', async () => {
    const { run, smtp } = await openMailSite();
    const { code, stderr, results } = await run(['--channel', 'email', '--person', 'Noor', '--json']);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(results).toEqual([
      {
        channel: 'email',
        target: 'Noor',
        delivered: true,
        reason: expect.stringContaining('ccepted'),
        at: expect.stringMatching(/^\d{4}-\d\d-\d\dT[\d:.]+Z$/),
      },
    ]);
    expect(smtp.mails.map(({ to }) => to)).toEqual([['noor@nursery.example']]);
    expect(readMail(smtp.mails[0]?.text ?? '').headers.subject).toEqual(['Test from Takewell']);
  });

  it('says why when it is refused, exit code 1', async () => {
    const { run, smtp } = await openMailSite();
    await smtp.behave({ as: 'answer', at: 'rcpt', code: 550 });
    const { code, stdout } = await run(['--channel', 'email', '--person', 'Noor']);
    expect(code).toBe(1);
    expect(stdout).toMatch(/^Noor: NOT delivered at [^\n]*550[^\n]*\n$/);
  });

  it('says that somebody has no address, exit code 1', async () => {
    const { run, smtp } = await openMailSite();
    const { code, stdout } = await run(['--channel', 'email', '--person', 'Sam']);
    expect(code).toBe(1);
    expect(stdout).toContain('no e-mail address');
    expect(smtp.connections()).toBe(0);
  });
});

describe('by webhook', () => {
  it('calls it once, signed', async () => {
    const receiver = await openHook();
    const { run } = await openSite({ webhooks: [webhookTo(receiver.url, { name: 'Gateway', secret: 'secret' })] });
    const { code, stdout } = await run(['--channel', 'webhook', '--webhook', 'Gateway']);
    expect({ code, stdout }).toEqual({ code: 0, stdout: expect.stringMatching(/^Gateway: delivered at /) });
    expect(receiver.calls).toMatchObject([{ isSignatureRight: true, message: { kind: 'test' } }]);
  });

  it('says what it answered when it does not take it', async () => {
    const receiver = await openHook();
    receiver.answerWith({ status: 503 });
    const { run } = await openSite({ webhooks: [webhookTo(receiver.url, { name: 'Gateway' })] });
    const { code, results } = await run(['--channel', 'webhook', '--webhook', 'Gateway', '--json']);
    expect({ code, results }).toMatchObject({
      code: 1,
      results: [{ delivered: false, reason: expect.stringContaining('503') }],
    });
  });

  it('tells a person through one that is called for each person', async () => {
    const receiver = await openHook();
    const { run } = await openSite({ webhooks: [webhookTo(receiver.url, { name: 'Chat', audience: 'each-person' })] });
    expect((await run(['--channel', 'webhook', '--webhook', 'Chat', '--person', 'Sam'])).code).toBe(0);
    expect(receiver.calls).toMatchObject([{ message: { person: { name: 'Sam' } } }]);
  });
});

describe('by push', () => {
  it('tries every phone of the person, says what holds it back, and leaves the phones as they were', async () => {
    const push = await openPushEndpoint();
    onTestFinished(push.close);
    const { store, run } = await openSite();
    for (const id of ['one', 'two']) {
      const { endpoint, keys } = push.subscribe();
      const phone = { id, personId: 'noor', name: `Phone ${id}`, endpoint, ...keys, pushKey: null, createdMs: 0 };
      await store.phones.put(phone);
    }
    const before = await store.phones.all();
    const { code, results } = await run(['--channel', 'web-push', '--person', 'Noor', '--json']);
    expect(code).toBe(1);
    expect(results).toMatchObject([
      { target: 'Phone one', delivered: false, reason: expect.stringContaining('names this machine') },
      { target: 'Phone two', delivered: false, reason: expect.stringContaining('names this machine') },
    ]);
    expect(await store.phones.all()).toEqual(before);
  });

  it('says that a person has no phone', async () => {
    const { run } = await openSite();
    const { code, stdout } = await run(['--channel', 'web-push', '--person', 'Noor']);
    expect({ code, stdout }).toEqual({ code: 1, stdout: expect.stringMatching(/^Noor has no phone/) });
  });
});

describe('the heartbeat', () => {
  it('asks the address once and says what it answered', async () => {
    const receiver = await openHook();
    const { run } = await openSite({ heartbeat: { url: receiver.url, allowLocal: true } });
    const { code, stdout } = await run(['--channel', 'heartbeat']);
    expect({ code, stdout }).toEqual({
      code: 0,
      stdout: expect.stringMatching(/^The heartbeat: delivered at \S+ The address answered 204 at \d\d:\d\d:\d\d\.\n$/),
    });
    expect(receiver.calls).toHaveLength(1);
  });

  it('says that no address is set, exit code 1', async () => {
    const { run } = await openSite();
    const { code, stdout } = await run(['--channel', 'heartbeat']);
    expect({ code, stdout }).toEqual({ code: 1, stdout: expect.stringContaining('No address is set') });
  });
});

const hook = webhookTo('https://gateway.example/hook', { name: 'Gateway' });
const misuses: [string, string[], string][] = [
  ['no channel', ['--person', 'Noor'], '--channel'],
  ['a channel there is not', ['--channel', 'pigeon', '--person', 'Noor'], '"pigeon"'],
  ['nobody named', ['--channel', 'email'], '--person'],
  ['somebody there is not', ['--channel', 'email', '--person', 'Kim'], '"Kim"'],
  ['a webhook there is not', ['--channel', 'webhook', '--webhook', 'Chat'], '"Gateway"'],
  ['a webhook for a mail', ['--channel', 'email', '--webhook', 'Gateway', '--person', 'Noor'], '--webhook'],
  ['a person for the siren', ['--channel', 'siren', '--person', 'Noor'], '--person'],
  ['a webhook for the heartbeat', ['--channel', 'heartbeat', '--webhook', 'Gateway'], '--webhook'],
  ['a person for the whole site', ['--channel', 'webhook', '--webhook', 'Gateway', '--person', 'Noor'], '--person'],
];

it.each(misuses)('used wrongly, %s: one line that names it, exit code 2', async (_what, args, named) => {
  const { run } = await openSite({ webhooks: [hook] });
  const { code, stdout, stderr } = await run(args);
  expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
  expect(stderr).toMatch(/^[^\n]+\n$/);
  expect(stderr).toContain(named);
});
