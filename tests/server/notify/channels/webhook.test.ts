// Against a real receiver on a loopback port.
import { describe, expect, onTestFinished, test } from 'vitest';
import { createWebhook } from '../../../../server/notify/channels/webhook.ts';
import { buildNoticeMessage } from '../../../../server/notify/notice-message.ts';
import { finding } from '../../../../shared/finding.ts';
import { sampleAlarm, sampleFacts, sampleNotice, sampleOccasion } from '../../../support/notice-samples.ts';
import { openWebhookReceiver, webhookTo } from '../../../support/webhook-receiver.ts';

const message = buildNoticeMessage(sampleNotice, sampleFacts, sampleOccasion);
const SECRET = 'a secret of the nursery';

async function open(secret = SECRET) {
  const receiver = await openWebhookReceiver(secret);
  onTestFinished(receiver.close);
  return receiver;
}

test('a receiver gets the alarm in the words of the HTTP interface, the sentence and where to look', async () => {
  const receiver = await open();
  const result = await createWebhook().send(message, webhookTo(receiver.url, { secret: SECRET }));
  expect(result).toEqual({ delivered: true, detail: finding('webhookTook', 204) });
  const [call] = receiver.calls;
  expect(call?.message).toMatchObject({
    noticeId: sampleNotice.id,
    kind: 'raised',
    at: '2026-03-01T12:04:00Z',
    toldLate: false,
    sentence: '▲ Hot: 29.1 °C, limit 28 for 4 min',
    advice: 'Shade now. Open the gap a hand’s width and mist the film.',
    url: 'https://takewell.example/chambers/c2?alarm=c2.heat.mm7',
    chamber: { id: 'c2', name: 'Chamber 2' },
    batch: { id: 'b1', code: 'T-117' },
  });
  expect(call?.message.alarm).toEqual({
    id: 'c2.heat.mm7',
    chamberId: 'c2',
    chamberName: 'Chamber 2',
    batchId: null,
    batchCode: 'T-117',
    rule: 'heat',
    probeId: null,
    probeName: null,
    state: 'unacknowledged',
    level: 1,
    priority: 'high',
    since: '2026-03-01T12:00:00Z',
    occurredAt: '2026-03-01T12:04:00Z',
    limit: 28,
    value: 29.1,
    peak: 29.4,
    peakAt: '2026-03-01T12:04:00Z',
    acknowledgedAt: null,
    acknowledgedBy: null,
    returnedAt: null,
    shelvedUntil: null,
    shelvedReason: null,
  });
});

test('the notice can be told from a repetition, and that it is ours, by its headers', async () => {
  const receiver = await open();
  await createWebhook().send(message, webhookTo(receiver.url, { secret: SECRET }));
  const [call] = receiver.calls;
  expect(call?.noticeId).toBe(sampleNotice.id);
  expect(call?.headers['content-type']).toBe('application/json');
  expect(call?.isSignatureRight).toBe(true);
});

test('with another secret the signature does not fit, and without one there is none', async () => {
  const receiver = await open();
  await createWebhook().send(message, webhookTo(receiver.url, { secret: 'another' }));
  await createWebhook().send(message, webhookTo(receiver.url));
  expect(receiver.calls.map((call) => call.isSignatureRight)).toEqual([false, null]);
});

test('an alarm that is over is told with the moment of its return', async () => {
  const receiver = await open();
  const alarm = { ...sampleAlarm, level: 0, returnedMs: Date.UTC(2026, 2, 1, 12, 12), batchId: 'b1' } as const;
  const returned = buildNoticeMessage({ ...sampleNotice, kind: 'returned' }, { ...sampleFacts, alarm }, sampleOccasion);
  await createWebhook().send(returned, webhookTo(receiver.url));
  expect(receiver.calls[0]?.message).toMatchObject({
    kind: 'returned',
    alarm: { returnedAt: '2026-03-01T12:12:00Z', level: 0, batchId: 'b1' },
  });
});

describe('what a receiver answers', () => {
  test.each([
    [{ status: 200 }, { delivered: true }],
    [{ status: 404 }, { delivered: false, retryable: false, reason: finding('webhookRefuses', 404) }],
    [{ status: 408 }, { delivered: false, retryable: true }],
    [
      { status: 429, headers: { 'retry-after': '30' } },
      { delivered: false, retryable: true, retryAfterMs: 30_000 },
    ],
    [{ status: 500 }, { delivered: false, retryable: true, serviceDown: true }],
  ])('%j', async (answer, expected) => {
    const receiver = await open();
    receiver.answerWith(answer);
    const result = await createWebhook().send(message, webhookTo(receiver.url));
    expect(result).toMatchObject(expected);
  });

  test('nothing at all: left after the time limit, to be tried again', async () => {
    const receiver = await open();
    receiver.answerWith('stall');
    const result = await createWebhook({ timeoutMs: 50 }).send(message, webhookTo(receiver.url));
    expect(result).toMatchObject({ delivered: false, retryable: true, serviceDown: true });
  });

  test('a redirect: it is not followed, and the person is told to enter the final address', async () => {
    const [receiver, elsewhere] = [await open(), await open()];
    receiver.answerWith({ status: 307, headers: { location: elsewhere.url } });
    const result = await createWebhook().send(message, webhookTo(receiver.url));
    expect(result).toMatchObject({ delivered: false, retryable: false, reason: finding('webhookElsewhere', 307) });
    expect(elsewhere.calls).toEqual([]);
  });
});

test.each(['127.0.0.1', 'localhost', '[::ffff:7f00:1]', '2130706433'])(
  'unless local addresses are allowed, a call to %s never leaves',
  async (host) => {
    const receiver = await open();
    const url = receiver.url.replace('127.0.0.1', host);
    const result = await createWebhook().send(message, webhookTo(url, { allowLocal: false }));
    const reason = finding('localAddress', new URL(url).hostname);
    expect(result).toEqual({ delivered: false, retryable: false, reason });
    expect(receiver.calls).toEqual([]);
  },
);

test.each(['ftp://hook.example/', 'file:///etc/passwd', 'not an address'])('%s is no address to call', async (url) => {
  await expect(createWebhook().send(message, webhookTo(url))).resolves.toEqual({
    delivered: false,
    retryable: false,
    reason: finding('notWebAddress'),
  });
});
