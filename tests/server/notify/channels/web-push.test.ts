// Against a real push endpoint: what arrives is decrypted and its signature verified there.

import { describe, expect, onTestFinished, test } from 'vitest';
import webPush from 'web-push';
import type { SendResult } from '../../../../server/notify/channels/channel.ts';
import { createWebPush, topicOf } from '../../../../server/notify/channels/web-push.ts';
import { buildNoticeMessage } from '../../../../server/notify/notice-message.ts';
import type { VapidKeys } from '../../../../server/notify/vapid-keys.ts';
import { finding } from '../../../../shared/finding.ts';
import type { PeerAnswer } from '../../../support/http-peer.ts';
import { sampleFacts, sampleNotice, sampleOccasion } from '../../../support/notice-samples.ts';
import { openPushEndpoint, type Subscription } from '../../../support/push-endpoint.ts';

const keys = webPush.generateVAPIDKeys();
const vapid: VapidKeys = {
  publicKey: keys.publicKey,
  pairOf: (pushKey) => (pushKey === null ? keys : null),
  subject: () => 'mailto:takewell@nursery.example',
  receiptOf: () => 'receipt',
  isReceipt: () => false,
};
const message = buildNoticeMessage(sampleNotice, sampleFacts, sampleOccasion);

async function open() {
  const endpoint = await openPushEndpoint();
  onTestFinished(endpoint.close);
  return endpoint;
}

function targetOf({ endpoint, keys: own }: Subscription) {
  return { endpoint, ...own, pushKey: null };
}

test('a phone can read the push, and the push service knows whose it is and how it is to be kept', async () => {
  const endpoint = await open();
  const target = targetOf(endpoint.subscribe());
  const result = await createWebPush({ vapid, allowLocal: true }).send(message, target);
  expect(result).toEqual({ delivered: true, detail: finding('pushTaken', new URL(endpoint.origin).host, 201) });
  expect(endpoint.faults).toEqual([]);
  const [push] = endpoint.received;
  expect(push).toMatchObject({ title: '▲ Chamber 2: hot 29.1 °C', body: message.body, tag: 'c2.heat.mm7' });
  expect(push?.headers).toMatchObject({ ttl: '21600', urgency: 'high', topic: topicOf('c2.heat.mm7') });
  expect(push?.vapid).toMatchObject({ aud: endpoint.origin, sub: vapid.subject(), key: keys.publicKey });
});

test('what is not urgent is sent so that a phone may sleep on', async () => {
  const endpoint = await open();
  const calm = { ...message, urgent: false };
  await createWebPush({ vapid, allowLocal: true }).send(calm, targetOf(endpoint.subscribe()));
  expect(endpoint.received[0]?.headers.urgency).toBe('normal');
});

test('the topic of an alarm is always the same, of another alarm another, and never longer than 32 characters', () => {
  expect(topicOf('c2.heat.mm7')).toMatch(/^[A-Za-z0-9_-]{32}$/);
  expect(topicOf('c2.heat.mm7')).toBe(topicOf('c2.heat.mm7'));
  expect(topicOf('c2.heat.mm8')).not.toBe(topicOf('c2.heat.mm7'));
});

describe('what a push service answers', () => {
  const rows: [PeerAnswer, Partial<SendResult>][] = [
    [{ status: 202 }, { delivered: true }],
    [{ status: 404 }, { delivered: false, retryable: false, gone: true }],
    [{ status: 410 }, { delivered: false, retryable: false, gone: true }],
    [{ status: 413 }, { delivered: false, retryable: false, reason: finding('pushTooLarge', 413) }],
    [{ status: 400 }, { delivered: false, retryable: true, refusal: 'message' }],
    [
      { status: 307, headers: { location: 'http://127.0.0.1:9/' } },
      { delivered: false, retryable: true, refusal: 'message' },
    ],
    [
      { status: 403 },
      { delivered: false, retryable: true, refusal: 'signature', reason: finding('pushSignature', 403) },
    ],
    [
      { status: 429, headers: { 'retry-after': '60' } },
      { retryable: true, retryAfterMs: 60_000, serviceDown: false },
    ],
    [{ status: 500 }, { delivered: false, retryable: true, serviceDown: true }],
    [
      { status: 503, headers: { 'retry-after': '9' } },
      { retryable: true, retryAfterMs: 9_000, serviceDown: true },
    ],
  ];
  test.each(rows)('%j', async (answer, expected) => {
    const endpoint = await open();
    endpoint.answerWith(answer);
    const result = await createWebPush({ vapid, allowLocal: true }).send(message, targetOf(endpoint.subscribe()));
    expect(result).toMatchObject(expected);
  });
});

test('a push service that takes the request and says nothing is left after the time limit, to be tried again', async () => {
  const endpoint = await open();
  endpoint.answerWith('stall');
  const channel = createWebPush({ vapid, allowLocal: true, timeoutMs: 50 });
  await expect(channel.send(message, targetOf(endpoint.subscribe()))).resolves.toEqual({
    delivered: false,
    retryable: true,
    serviceDown: true,
    reason: finding('noAnswerWithin', new URL(endpoint.origin).host, 0.05),
  });
});

test('a push service that is not there is tried again', async () => {
  const endpoint = await open();
  const target = targetOf(endpoint.subscribe());
  await endpoint.close();
  const result = await createWebPush({ vapid, allowLocal: true }).send(message, target);
  const reason = finding('refusesConnection', new URL(endpoint.origin).host);
  expect(result).toEqual({ delivered: false, retryable: true, serviceDown: true, reason });
});

describe('unless local addresses are allowed', () => {
  test.each(['127.0.0.1', 'localhost', '[::ffff:127.0.0.1]'])('a push to %s never leaves', async (host) => {
    const endpoint = await open();
    const target = targetOf(endpoint.subscribe());
    const local = { ...target, endpoint: target.endpoint.replace('127.0.0.1', host) };
    const result = await createWebPush({ vapid, allowLocal: false }).send(message, local);
    const reason = finding('localAddress', new URL(local.endpoint).hostname);
    expect(result).toEqual({ delivered: false, retryable: false, reason });
    expect(endpoint.asked()).toBe(0);
  });
});

test.each([
  ['no key', { p256dh: '' }, 'phoneSeal'],
  ['a key that is too short', { p256dh: 'AAAA' }, 'phoneSeal'],
  ['a key that is no point of the curve', { p256dh: Buffer.alloc(65, 4).toString('base64url') }, 'phoneSeal'],
  ['a secret that is too short', { auth: 'AAAA' }, 'phoneSeal'],
  ['an address that is none', { endpoint: 'not an address' }, 'phoneAddress'],
  ['an address of another kind', { endpoint: 'ftp://push.example/1' }, 'notWebAddress'],
])('a subscription with %s is refused with a reason that says what to do', async (_, change, key) => {
  const endpoint = await open();
  const target = { ...targetOf(endpoint.subscribe()), ...change };
  const result = await createWebPush({ vapid, allowLocal: true }).send(message, target);
  expect(result).toMatchObject({ delivered: false, reason: { key } });
  expect(endpoint.asked()).toBe(0);
});
