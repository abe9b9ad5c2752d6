// Two things go wrong in one tent within five minutes: a person is told once, and the message names both.
import { expect, it, onTestFinished } from 'vitest';
import { MINUTE_MS } from '../../shared/units.ts';
import { openBatch, openTent } from '../support/open-tent.ts';
import { openWebhookReceiver } from '../support/webhook-receiver.ts';

const template = '{"kind": "{{kind}}", "rule": "{{alarm.rule}}", "body": "{{body}}"}';

async function openTold() {
  const receiver = await openWebhookReceiver();
  onTestFinished(receiver.close);
  const tent = await openTent();
  const hook = { name: 'Gateway', url: receiver.url, allowLocal: true, audience: 'each-person', template };
  await tent.api.put('/channels', { webhooks: [hook] });
  await tent.api.patch('/people/me', { temperatureUnit: '°F' });
  await openBatch(tent);
  const told = async () => {
    await tent.app.deliver();
    const calls = receiver.calls.map(({ message }) => message as { kind: string; rule: string; body: string });
    return calls.filter(({ rule }) => rule === 'heat' || rule === 'dry');
  };
  return { tent, told };
}

it('one message stands for both, and each names what else stands when it is sent', async () => {
  const { tent, told } = await openTold();
  await tent.stay(28.5, 2 * MINUTE_MS, 95);
  expect(await told()).toMatchObject([
    { kind: 'raised', rule: 'heat', body: expect.not.stringContaining('Also here') },
  ]);
  // Dry air counts for longer before it is an alarm, and then waits for the five minutes of the first message.
  await tent.stay(28.5, 12 * MINUTE_MS, 80);
  expect((await tent.alarms()).map(({ rule }) => rule).sort()).toEqual(['dry', 'heat']);
  const later = (await told()).slice(1);
  expect(later.length).toBeGreaterThan(0);
  for (const { rule, body } of later)
    expect(body).toMatch(rule === 'heat' ? /Also here: .*80 %/ : /Also here: .*hot 83\.3 °F/);
});

it('somebody who has taken one of them: it is not named as waiting any more', async () => {
  const { tent, told } = await openTold();
  await tent.stay(28.5, 2 * MINUTE_MS, 95);
  const [heat] = await tent.alarms();
  await tent.api.post(`/alarms/${heat?.id}/acknowledge`);
  await tent.stay(28.5, 12 * MINUTE_MS, 80);
  const dry = (await told()).filter(({ rule }) => rule === 'dry');
  expect(dry.length).toBeGreaterThan(0);
  for (const { body } of dry) expect(body).not.toContain('hot 83');
});
