// Against a real mail server in a process of its own.
import { describe, expect, onTestFinished, test } from 'vitest';
import { createEmail } from '../../../../server/notify/channels/email.ts';
import { buildNoticeMessage, type NoticeMessage } from '../../../../server/notify/notice-message.ts';
import type { EmailSettings } from '../../../../shared/api/channels.ts';
import { type Finding, finding } from '../../../../shared/finding.ts';
import { findFreePort } from '../../../support/free-port.ts';
import { sampleFacts, sampleNotice, sampleOccasion } from '../../../support/notice-samples.ts';
import { openSmtpServer, type SmtpBehaviour } from '../../../support/open-smtp-server.ts';
import { readMail } from '../../../support/read-mail.ts';

const person = { name: 'Crew one', email: 'crew@nursery.example', phoneNumber: null };
const crew = person.email;
const plain = buildNoticeMessage(sampleNotice, sampleFacts, { ...sampleOccasion, person });
const acknowledge = { token: 'one-use', url: 'https://takewell.example/acknowledge/one-use' };
const message: NoticeMessage = { ...plain, acknowledge };

async function open({ tls = false, isTrusted = true, timeoutMs = 5_000 } = {}) {
  const server = await openSmtpServer({ tls });
  onTestFinished(server.close);
  const channel = createEmail({ timeoutMs, ...(isTrusted && { trusted: server.certificate }) });
  const send = (change: Partial<EmailSettings> = {}, told = message) =>
    channel.send(told, { server: server.settings(change), to: 'crew@nursery.example' });
  return { server, send };
}

describe('a mail that is taken over', () => {
  test.each([
    ['STARTTLS', false],
    ['TLS from the first byte', true],
  ])('by %s went encrypted, from the site to the person', async (_security, tls) => {
    const { server, send } = await open({ tls });
    await expect(send()).resolves.toEqual({
      delivered: true,
      detail: finding('mailTaken', 'localhost', 'crew@nursery.example'),
    });
    expect(server.mails).toMatchObject([
      { from: 'alerts@nursery.example', to: ['crew@nursery.example'], isSecure: true, user: null },
    ]);
  });

  test('is signed in for with user and password', async () => {
    const { server, send } = await open();
    await send({ user: 'takewell', password: 'right' });
    expect(server.mails).toMatchObject([{ user: 'takewell', isSecure: true }]);
  });

  test('says the same as plain text and as small HTML, with both links', async () => {
    const { server, send } = await open();
    await send();
    const { headers, text, html } = readMail(server.mails[0]?.text ?? '');
    expect(headers.subject).toEqual(['▲ Chamber 2: hot 29.1 °C']);
    for (const words of [message.url, acknowledge.url, 'Batch T-117.', 'Shade now.']) {
      expect(text).toContain(words);
      expect(html).toContain(words);
    }
  });

  test('says that a program wrote it, and is one with its repetition and with its alarm', async () => {
    const { server, send } = await open();
    await send();
    await send();
    await send({}, { ...message, noticeId: 'another notice of the alarm' });
    const [first, again, later] = server.mails.map(({ text }) => readMail(text).headers);
    expect(first?.['auto-submitted']).toEqual(['auto-generated']);
    expect(first?.['message-id']?.[0]).toMatch(/^<[^<>@\s]+@nursery\.example>$/);
    expect(again?.['message-id']).toEqual(first?.['message-id']);
    expect(later?.['message-id']).not.toEqual(first?.['message-id']);
    expect(new Set([first, again, later].map((headers) => headers?.references?.[0])).size).toBe(1);
  });

  test('of a name that would write headers of its own has no header more', async () => {
    const { server, send } = await open();
    const evil = 'Tent\r\nBcc: all@elsewhere.example\r\n\r\n<script>alert(1)</script>';
    const name = 'Crew" <x@elsewhere.example>\r\nCc: y@elsewhere.example';
    await send({}, { ...message, title: evil, body: evil, siteName: evil, person: { ...person, name } });
    const [mail] = server.mails;
    const { headers, html } = readMail(mail?.text ?? '');
    expect(mail?.to).toEqual(['crew@nursery.example']);
    expect(headers.bcc ?? headers.cc).toBeUndefined();
    expect(headers.subject).toHaveLength(1);
    expect(html).not.toContain('<script>');
  });
});

describe('what the mail server answers', () => {
  const at = (step: 'mail' | 'rcpt' | 'data', code: number): SmtpBehaviour => ({ as: 'answer', at: step, code });
  test.each([
    [
      'defers the address: this one waits',
      at('rcpt', 450),
      { retryable: true, serviceDown: false, reason: finding('mailAddressDeferred', 'localhost', crew, 450) },
    ],
    ['defers the message: this one waits', at('data', 451), { retryable: true, serviceDown: false }],
    [
      'has no time for anybody',
      at('rcpt', 421),
      { retryable: true, serviceDown: true, reason: finding('mailLater', 'localhost', 421) },
    ],
    [
      'knows no such address: it will not later',
      at('rcpt', 550),
      { retryable: false, serviceDown: false, reason: finding('mailAddressRefused', 'localhost', crew, 550) },
    ],
    [
      'refuses the message: it will later too',
      at('data', 554),
      { retryable: false, serviceDown: false, reason: finding('mailRefused', 'localhost', 554) },
    ],
    [
      'refuses our sender: for everybody, until it is entered anew',
      at('mail', 553),
      { retryable: true, serviceDown: true, reason: finding('mailSenderRefused', 'localhost', 553) },
    ],
  ])('%s', async (_why, behaviour, expected) => {
    const { server, send } = await open();
    await server.behave(behaviour);
    await expect(send()).resolves.toMatchObject({ delivered: false, ...expected });
  });

  test('no to our password is said as that, and may be mended', async () => {
    const { send } = await open();
    await expect(send({ user: 'takewell', password: 'wrong' })).resolves.toEqual({
      delivered: false,
      retryable: true,
      serviceDown: true,
      reason: finding('mailSignIn', 'localhost', 535),
    });
  });
});

describe('a mail server that cannot be used is left, with the reason, to be tried again', () => {
  const down = (reason: Finding) => ({ delivered: false, retryable: true, serviceDown: true, reason });

  test.each([
    ['before its greeting', 'stall-before-greeting'],
    ['when the message is with it', 'stall-in-data'],
  ] as const)('one that hangs %s', async (_when, as) => {
    const { server, send } = await open({ timeoutMs: 300 });
    await server.behave({ as });
    await expect(send()).resolves.toEqual(down(finding('mailNoAnswerOn', 'localhost', server.settings().port)));
  });

  test.each([
    ['STARTTLS', false],
    ['TLS', true],
  ])('one whose certificate nobody vouches for, by %s: nothing was sent', async (_security, tls) => {
    const { server, send } = await open({ tls, isTrusted: false });
    await expect(send({ user: 'takewell', password: 'right' })).resolves.toEqual(
      down(finding('mailCertificate', 'localhost')),
    );
    expect(server.mails).toEqual([]);
  });

  test('one whose certificate is for another name', async () => {
    const { server, send } = await open();
    await expect(send({ host: '127.0.0.1' })).resolves.toEqual(down(finding('mailCertificate', '127.0.0.1')));
    expect(server.mails).toEqual([]);
  });

  test('one that expects TLS where we begin readable', async () => {
    const { send } = await open({ tls: true, timeoutMs: 300 });
    await expect(send({ security: 'starttls' })).resolves.toMatchObject(
      down(expect.objectContaining({ key: expect.any(String) })),
    );
  });

  test('one that speaks readable where we begin with TLS', async () => {
    const { server, send } = await open();
    const { host, port } = server.settings();
    await expect(send({ security: 'tls' })).resolves.toEqual(down(finding('mailNoTls', host, port)));
  });

  test('one that is not there', async () => {
    const { send } = await open();
    const port = await findFreePort();
    await expect(send({ port })).resolves.toEqual(down(finding('refusesConnection', `localhost:${port}`)));
  });
});

test('sending that is broken off ends at once', async () => {
  const { server } = await open();
  await server.behave({ as: 'stall-in-data' });
  const stop = new AbortController();
  const channel = createEmail({ trusted: server.certificate });
  const sending = channel.send(message, { server: server.settings(), to: 'crew@nursery.example' }, stop.signal);
  await server.whenMailed(1);
  stop.abort();
  await expect(sending).resolves.toMatchObject({ delivered: false, retryable: true });
});
