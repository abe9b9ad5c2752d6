// Whether anybody can be told: the three alarms about it come and go on the real service with what really became of what was sent.
import { expect, it, onTestFinished } from 'vitest';
import type { AlarmView } from '../../shared/api/alarms.ts';
import type { ChannelsView } from '../../shared/api/channels.ts';
import type { ReachView } from '../../shared/api/reach.ts';
import type { Person } from '../../shared/api/session.ts';
import { MINUTE_MS, SECOND_MS } from '../../shared/units.ts';
import { openBatch, openTent, type Tent } from '../support/open-tent.ts';
import { openWebhookReceiver } from '../support/webhook-receiver.ts';

const PLAN = { order: [], nextAfterMinutes: 5, everyoneAfterMinutes: 15, sirenAfterMinutes: 20, repeatMinutes: 10 };

/** The watch goes round for so long, and what it has to tell is tried. */
async function goRound({ app, clock }: Tent, minutes: number): Promise<void> {
  for (let round = 0; round < minutes * 2; round += 1) {
    clock.advance(30 * SECOND_MS);
    await app.tick();
    await app.deliver();
  }
}

async function toldOf({ api }: Tent): Promise<string[]> {
  const { body } = await api.get<{ items: AlarmView[] }>('/alarms?state=active&chamberId=takewell');
  return body.items
    .filter(({ level }) => level > 0)
    .map(({ rule, priority }) => `${rule} ${priority}`)
    .sort();
}

/** A webhook that tells the manager, as a gateway for text messages does. */
async function addGateway(tent: Tent) {
  const receiver = await openWebhookReceiver();
  onTestFinished(receiver.close);
  await tent.api.patch('/people/me', { phoneNumber: '+49301234567' });
  const gateway = { name: 'Gateway', url: receiver.url, allowLocal: true, headers: [], audience: 'each-person' };
  const { status, body } = await tent.api.put<ChannelsView>('/channels', { webhooks: [gateway] });
  expect(status, JSON.stringify(body)).toBe(200);
  const webhookId = body.webhooks[0]?.id;
  return { receiver, test: () => tent.api.post('/channels/test', { channel: 'webhook', webhookId }) };
}

it('tells that nobody can be reached while a batch is open, until somebody can', async () => {
  const tent = await openTent();
  await goRound(tent, 20);
  expect(await toldOf(tent)).toEqual([]);
  await openBatch(tent);
  await goRound(tent, 14);
  expect(await toldOf(tent)).not.toContain('nobody-reachable medium');
  await goRound(tent, 2);
  expect(await toldOf(tent)).toContain('nobody-reachable medium');
  await addGateway(tent);
  await goRound(tent, 1);
  expect(await toldOf(tent)).not.toContain('nobody-reachable medium');
});

it('tells that everything sent to a person fails, with why, until something is taken over again', async () => {
  const tent = await openTent();
  await openBatch(tent);
  const { receiver, test } = await addGateway(tent);
  const own = async () => (await tent.api.get<ReachView>('/people/me/reach')).body;
  expect(await own()).toMatchObject({
    verdict: 'untried',
    isOnDuty: true,
    ways: [{ name: 'Gateway', lastResult: null }],
  });
  await goRound(tent, 6);
  expect(await toldOf(tent)).not.toContain('delivery-failing high');
  receiver.answerWith({ status: 404 });
  await test();
  await goRound(tent, 6);
  expect(await own()).toMatchObject({ verdict: 'failing', ways: [{ channel: 'webhook', works: false }] });
  expect(await toldOf(tent)).toContain('delivery-failing high');
  const { body } = await tent.api.get<{ items: AlarmView[] }>('/alarms?state=active&chamberId=takewell');
  const failing = body.items.find(({ rule }) => rule === 'delivery-failing');
  expect(failing?.sentence).toMatch(/Test manager.*404/);
  expect(failing?.service).toMatchObject({
    trouble: 'the webhook refuses the notice (404): check its address and what it expects',
    finding: { key: 'webhookRefuses', args: [404] },
  });
  receiver.answerWith({ status: 204 });
  await test();
  expect(await own()).toMatchObject({ verdict: 'reached', ways: [{ works: true }] });
  await goRound(tent, 1);
  expect(await toldOf(tent)).not.toContain('delivery-failing high');
});

it('warns of a gap in the rota, tells it while it lasts, and is quiet when somebody is on duty again', async () => {
  const tent = await openTent();
  await openBatch(tent);
  await addGateway(tent);
  const { body } = await tent.api.get<{ items: Person[] }>('/people');
  const personId = body.items[0]?.id;
  // Sunday noon: on duty until 12:30, and again from 13:00 on; the rest of the week is covered.
  const span = (weekday: number, from: string, to: string) => ({ personId, weekday, from, to });
  const days = [1, 2, 3, 4, 5, 6].map((weekday) => span(weekday, '00:00', '00:00'));
  const spans = [...days, span(7, '00:00', '12:30'), span(7, '13:00', '00:00')];
  expect((await tent.api.put('/duty', { ...PLAN, spans })).status).toBe(200);
  await goRound(tent, 2);
  expect(await toldOf(tent)).toContain('nobody-on-duty low');
  tent.clock.set(tent.clock.nowMs() + 30 * MINUTE_MS);
  await goRound(tent, 2);
  expect(await toldOf(tent)).toContain('nobody-on-duty high');
  tent.clock.set(tent.clock.nowMs() + 30 * MINUTE_MS);
  await goRound(tent, 1);
  expect((await toldOf(tent)).filter((one) => one.startsWith('nobody-on-duty'))).toEqual([]);
});
