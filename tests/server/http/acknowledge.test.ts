// Acknowledging by the link in a message, without signing in: only a press of the button does, once, for one alarm and one person.
import { describe, expect, it, onTestFinished } from 'vitest';
import { HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';
import { openHotTent } from '../../support/open-tent.ts';
import { openPushEndpoint } from '../../support/push-endpoint.ts';
import { openWebhookReceiver, webhookTo } from '../../support/webhook-receiver.ts';

/** A tent that got too hot; the manager has a phone and the site a webhook, and both were told. */
async function openToldTent() {
  const [push, receiver] = [await openPushEndpoint(), await openWebhookReceiver()];
  onTestFinished(push.close);
  onTestFinished(receiver.close);
  const tent = await openHotTent({
    async before({ api }) {
      const { endpoint, keys } = push.subscribe();
      await api.post('/phones', { name: 'Red', subscription: { endpoint, keys } });
      const { id: _, ...webhook } = webhookTo(receiver.url, { name: 'Chat of the crew' });
      await api.put('/channels', { webhooks: [webhook] });
    },
  });
  await tent.app.deliver();
  const told = receiver.calls[0]?.message.acknowledgeUrl;
  if (typeof told !== 'string') throw new Error('the webhook should have got a link');
  const token = String(push.received[0]?.data['acknowledge']);
  const open = (init: RequestInit = {}, url = told) => fetch(url, { redirect: 'manual', ...init });
  const press = (url = told) =>
    open({ method: 'POST', headers: { origin: 'null', 'sec-fetch-site': 'same-origin' } }, url);
  const stateNow = async () => (await tent.alarms())[0]?.state;
  return { ...tent, push, receiver, link: told, token, open, press, stateNow };
}

describe('looking at a link', () => {
  it.each([
    ['opened', { method: 'GET' }],
    ['opened by a program that makes a preview', { method: 'GET', headers: { 'user-agent': 'link preview' } }],
    ['fetched ahead', { method: 'GET', headers: { 'sec-purpose': 'prefetch' } }],
    ['asked for its head', { method: 'HEAD' }],
  ])('changes nothing, however often it is %s', async (_how, init) => {
    const tent = await openToldTent();
    for (const _ of [1, 2, 3]) expect((await tent.open(init)).status).toBe(200);
    expect(await tent.stateNow()).toBe('unacknowledged');
    expect((await tent.press()).status).toBe(303);
  });

  it('shows what it is about and one button, with no script, for no search engine and no other site', async () => {
    const tent = await openToldTent();
    const answer = await tent.open();
    const page = await answer.text();
    expect(page).toContain('Tent 1');
    expect(page).toContain('Hot: 28.5 °C');
    expect(page.match(/<button/g)).toHaveLength(1);
    expect(page).not.toContain('<script');
    expect(answer.headers.get('referrer-policy')).toBe('no-referrer');
    expect(answer.headers.get('x-robots-tag')).toContain('noindex');
    expect(answer.headers.get('cache-control')).toBe('no-store');
    expect(answer.headers.get('content-security-policy')).toContain("default-src 'none'");
  });

  it('is in the language that its reader prefers', async () => {
    const tent = await openToldTent();
    const page = await (await tent.open({ headers: { 'accept-language': 'nl-BE,nl;q=0.9' } })).text();
    expect(page).toContain('lang="nl"');
    expect(page).toContain('Ik pak het op');
  });
});

describe('pressing the button', () => {
  it('acknowledges in the name that the link was made for, and says who has it', async () => {
    const tent = await openToldTent();
    expect((await tent.press()).status).toBe(303);
    expect((await tent.alarms())[0]).toMatchObject({ state: 'acknowledged', acknowledgedBy: 'Chat of the crew' });
    const page = await (await tent.open()).text();
    expect(page).toContain('Chat of the crew has it, since 12:01. There is nothing to press.');
    expect(page).not.toContain('<button');
  });

  it('works once: the alarm that came back asks for somebody who is there', async () => {
    const tent = await openToldTent();
    await tent.press();
    // Far too hot takes the acknowledgement back.
    await tent.stay(30, 2 * MINUTE_MS, 95);
    expect(await tent.stateNow()).toBe('unacknowledged');
    expect(await (await tent.press()).text()).toContain('This link was used already.');
    expect(await tent.stateNow()).toBe('unacknowledged');
  });

  it('of an alarm that somebody else has taken changes nothing, and says who', async () => {
    const tent = await openToldTent();
    await tent.api.post(`/alarms/${tent.hot.id}/acknowledge`);
    expect(await (await tent.press()).text()).toContain('Test manager has it');
    expect((await tent.alarms())[0]?.acknowledgedBy).toBe('Test manager');
  });

  it('of an alarm that is over says so', async () => {
    const tent = await openToldTent();
    await tent.stay(24, 10 * MINUTE_MS, 95);
    expect(await (await tent.press()).text()).toContain('It is over.');
  });
});

describe('a link that is not good', () => {
  it('is not known after six hours', async () => {
    const tent = await openToldTent();
    tent.clock.advance(6 * HOUR_MS);
    expect((await tent.open()).status).toBe(404);
    expect((await tent.press()).status).toBe(404);
    expect(await tent.stateNow()).toBe('unacknowledged');
  });

  it.each(['A'.repeat(43), 'x', '..%2f..%2fetc', '%00'])('is not known when it was made up: %s', async (token) => {
    const tent = await openToldTent();
    const url = tent.link.replace(/[^/]*$/, token);
    const answer = await tent.press(url);
    expect(answer.status).toBe(404);
    expect(await tent.stateNow()).toBe('unacknowledged');
  });

  it('is slowed down, so that trying is no burden', async () => {
    const tent = await openToldTent();
    const statuses: number[] = [];
    for (let n = 0; n < 61; n += 1)
      statuses.push((await tent.open({}, tent.link.replace(/[^/]*$/, `made-up-${n}`))).status);
    expect(statuses.at(-1)).toBe(429);
  });

  it('is never kept as itself', async () => {
    const tent = await openToldTent();
    const secret = tent.link.split('/').at(-1) ?? '';
    expect(secret).toMatch(/^[A-Za-z0-9_-]{43}$/);
    expect(await tent.app.store.acknowledgeLinks.get(secret)).toBeNull();
  });
});

describe('a phone', () => {
  const post = (url: string, path: string, body: object) =>
    fetch(`${url}/api/v1${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });

  it('whose person is signed out acknowledges with what came in the push, in their name', async () => {
    const tent = await openToldTent();
    expect((await post(tent.app.url, '/acknowledge', { token: tent.token })).status).toBe(204);
    expect((await tent.alarms())[0]).toMatchObject({ state: 'acknowledged', acknowledgedBy: 'Test manager' });
    expect((await post(tent.app.url, '/acknowledge', { token: tent.token })).status).toBe(409);
  });

  it('whose person was removed acknowledges nothing', async () => {
    const tent = await openToldTent();
    const { body } = await tent.api.get<{ items: { id: string; name: string }[] }>('/people');
    const first = body.items.find(({ name }) => name === 'Test manager');
    await tent.app.store.people.remove(first?.id ?? '');
    expect((await post(tent.app.url, '/acknowledge', { token: tent.token })).status).toBe(404);
  });

  it('says that it has shown a notice, once, with the secret that came in it', async () => {
    const tent = await openToldTent();
    const { noticeId, receipt } = tent.push.received[0]?.data ?? {};
    tent.clock.advance(3_000);
    expect((await post(tent.app.url, '/receipts', { noticeId, secret: receipt })).status).toBe(204);
    expect(await tent.app.store.notices.get(String(noticeId))).toMatchObject({ confirmedMs: tent.clock.nowMs() });
    const phones = await tent.api.get<{ items: { confirmedAt: string | null }[] }>('/phones');
    expect(phones.body.items[0]?.confirmedAt).toBe(new Date(tent.clock.nowMs()).toISOString().replace('.000', ''));
  });

  it('cannot say so of a notice that it did not get', async () => {
    const tent = await openToldTent();
    const { noticeId } = tent.push.received[0]?.data ?? {};
    expect((await post(tent.app.url, '/receipts', { noticeId, secret: 'guessed' })).status).toBe(403);
    expect(await tent.app.store.notices.get(String(noticeId))).toMatchObject({ confirmedMs: null });
  });

  it('confirms a test too', async () => {
    const tent = await openToldTent();
    const { body } = await tent.api.get<{ items: { id: string }[] }>('/phones');
    await tent.api.post(`/phones/${body.items[0]?.id}/test`);
    const { noticeId, receipt } = tent.push.received.at(-1)?.data ?? {};
    expect((await post(tent.app.url, '/receipts', { noticeId, secret: receipt })).status).toBe(204);
    const phones = await tent.api.get<{ items: { confirmedAt: string | null }[] }>('/phones');
    expect(phones.body.items[0]?.confirmedAt).not.toBeNull();
  });
});
