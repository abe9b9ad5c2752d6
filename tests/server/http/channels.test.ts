// How alerts leave the site, as managers set it up: secrets go in and never come out.
import { describe, expect, it, onTestFinished } from 'vitest';
import type { ChannelsView } from '../../../shared/api/channels.ts';
import type { ProblemDetails } from '../../../shared/api/common.ts';
import { makeTestFolder, openTestApp } from '../../support/open-test-app.ts';
import { openWebhookReceiver } from '../../support/webhook-receiver.ts';

const nothing = { email: null, webhooks: [], siren: { enabled: true }, heartbeat: null, contact: null };
const hook = { name: 'Chat', url: 'https://hooks.example/takewell', secret: 'a secret to sign with' };
const email = {
  host: 'mail.example',
  port: 587,
  security: 'starttls',
  user: 'takewell',
  password: 'a password of the mail server',
  from: 'alerts@nursery.example',
};

async function openChannels(change: object = {}) {
  const site = await openTestApp();
  const { body } = await site.api.put<ChannelsView>('/channels', change);
  return { ...site, first: body.webhooks[0], kept: () => site.app.store.settings.get('channels') };
}

describe('the channels', () => {
  it('are none at first', async () => {
    const { api } = await openChannels();
    expect((await api.get('/channels')).body).toEqual(nothing);
  });

  it('keep secrets, passwords and values of headers, and never show them', async () => {
    const webhooks = [{ ...hook, headers: [{ name: 'x-api-key', value: 'key of the gateway' }] }];
    const { api, kept } = await openChannels({ email, webhooks });
    const { body } = await api.get<ChannelsView>('/channels');
    expect(body.email).toMatchObject({ host: 'mail.example', user: 'takewell', hasPassword: true });
    expect(body.webhooks).toMatchObject([{ name: 'Chat', hasSecret: true, headers: [{ name: 'x-api-key' }] }]);
    for (const secret of [email.password, hook.secret, 'key of the gateway']) {
      expect(JSON.stringify(body)).not.toContain(secret);
      expect(JSON.stringify(await kept())).toContain(secret);
    }
  });

  it('stay where a change does not name them', async () => {
    const { api } = await openChannels({ email, webhooks: [hook] });
    const { body } = await api.put<ChannelsView>('/channels', { siren: { enabled: false } });
    expect(body).toMatchObject({ siren: { enabled: false }, email: { host: 'mail.example' }, webhooks: [{}] });
  });

  it('stand after a restart, and are taken away with null', async () => {
    const folder = await makeTestFolder();
    const { app, api } = await openTestApp({ folder });
    const { body } = await api.put('/channels', { email, webhooks: [hook] });
    await app.close();
    const again = await openTestApp({ folder });
    expect((await again.api.get('/channels')).body).toEqual(body);
    expect((await again.api.put('/channels', { email: null, webhooks: [] })).body).toEqual(nothing);
  });

  it('are for managers', async () => {
    const { app, api } = await openTestApp();
    const { body } = await api.post<{ token: string }>('/tokens', { name: 'lamp', scope: 'read' });
    const answer = await fetch(`${app.url}/api/v1/channels`, { headers: { authorization: `Bearer ${body.token}` } });
    expect(answer.status).toBe(403);
  });
});

describe('a secret that is not named', () => {
  it('stays', async () => {
    const { api, first, kept } = await openChannels({ email, webhooks: [hook] });
    await api.put('/channels', {
      email: { ...email, password: undefined, port: 2525 },
      webhooks: [{ ...first, url: 'https://hooks.example/other' }],
    });
    expect(await kept()).toMatchObject({
      email: { port: 2525, password: email.password },
      webhooks: [{ url: 'https://hooks.example/other', secret: hook.secret }],
    });
  });

  it('goes when it is named as empty', async () => {
    const { api, first } = await openChannels({ webhooks: [hook] });
    const { body } = await api.put('/channels', { webhooks: [{ ...first, secret: '' }] });
    expect(body).toMatchObject({ webhooks: [{ hasSecret: false }] });
  });

  it('does not go along to another address', async () => {
    const { api, first, kept } = await openChannels({ email, webhooks: [hook] });
    const before = await kept();
    const answer = await api.put<ProblemDetails>('/channels', {
      email: { ...email, password: undefined, host: 'mail.elsewhere.example' },
      webhooks: [{ ...first, url: 'https://elsewhere.example/takewell' }],
    });
    expect(answer.status).toBe(400);
    expect(answer.body.faults?.map(({ where }) => where)).toEqual(['email.password', 'webhooks.0.secret']);
    expect(await kept()).toEqual(before);
  });
});

describe('what cannot work is refused where it is entered', () => {
  it.each([
    ['an address that is none', { webhooks: [{ ...hook, url: 'ftp://hooks.example' }] }, '/webhooks/0/url'],
    ['a webhook without a name', { webhooks: [{ url: hook.url }] }, '/webhooks/0/name'],
    ['a field that there is not', { webhooks: [{ ...hook, template: '{"t":"{{titel}}"}' }] }, 'webhooks.0.template'],
    ['a field outside of quotes', { webhooks: [{ ...hook, template: '{"t":{{title}}}' }] }, 'webhooks.0.template'],
    ['a form without a template', { webhooks: [{ ...hook, contentType: 'form' }] }, 'webhooks.0.template'],
    [
      'a header that is ours',
      { webhooks: [{ ...hook, headers: [{ name: 'Content-Length', value: '1' }] }] },
      '/webhooks/0/headers/0/name',
    ],
    [
      'a header with a line break',
      { webhooks: [{ ...hook, headers: [{ name: 'x-key', value: 'a\r\nx-other: b' }] }] },
      '/webhooks/0/headers/0/value',
    ],
    [
      'a header that says nothing',
      { webhooks: [{ ...hook, headers: [{ name: 'x-key' }] }] },
      'webhooks.0.headers.0.value',
    ],
    ['eleven webhooks', { webhooks: Array.from({ length: 11 }, () => hook) }, '/webhooks'],
    ['a password that anybody could read', { email: { ...email, security: 'none' } }, '/email/security'],
    [
      'a sender that is no address',
      { email: { ...email, from: 'alerts@nursery.example\r\nBcc: x@y.example' } },
      '/email/from',
    ],
    ['a contact that cannot be written to', { contact: 'http://nursery.example' }, '/contact'],
    ['a heartbeat to a file', { heartbeat: { url: 'file:///etc/passwd' } }, '/heartbeat/url'],
  ])('%s', async (_why, change, where) => {
    const { api } = await openTestApp();
    const answer = await api.put<ProblemDetails>('/channels', change);
    expect(answer.status).toBe(400);
    expect(answer.body.faults?.map((one) => one.where.replace(/^\/?/, '').replaceAll('/', '.'))).toEqual([
      where.replace(/^\//, '').replaceAll('/', '.'),
    ]);
    expect((await api.get('/channels')).body).toEqual(nothing);
  });
});

describe('the heartbeat, tried from the page', () => {
  it('asks the address once and says what it answered', async () => {
    const receiver = await openWebhookReceiver();
    onTestFinished(receiver.close);
    const { api } = await openChannels({ heartbeat: { url: receiver.url, allowLocal: true } });
    const { body } = await api.post('/channels/test', { channel: 'heartbeat' });
    expect(body).toMatchObject({ delivered: true, reason: expect.stringContaining('The address answered 204') });
    receiver.answerWith({ status: 301, headers: { location: 'https://elsewhere.example/' } });
    const again = await api.post('/channels/test', { channel: 'heartbeat' });
    expect(again.body).toMatchObject({
      delivered: false,
      reason: expect.stringContaining('redirects are not followed'),
    });
    expect(receiver.calls).toHaveLength(2);
  });

  it('is not sent to this machine unless that is allowed', async () => {
    const { api } = await openChannels({ heartbeat: { url: 'http://127.0.0.1:9/', allowLocal: false } });
    const { body } = await api.post('/channels/test', { channel: 'heartbeat' });
    expect(body).toMatchObject({ delivered: false, reason: expect.stringContaining('names this machine') });
    await api.patch('/people/me', { language: 'es' });
    const again = await api.post('/channels/test', { channel: 'heartbeat' });
    expect(again.body).toMatchObject({ reason: expect.stringContaining('127.0.0.1 es esta misma máquina') });
  });
});
