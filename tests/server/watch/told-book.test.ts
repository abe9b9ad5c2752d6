// Who was told of an alarm is told that it is over, and nobody else; the outbox knows it across a restart. Real receivers on both channels.
import { describe, expect, it, onTestFinished } from 'vitest';
import { createToldBook } from '../../../server/watch/told-book.ts';
import type { ChannelsView } from '../../../shared/api/channels.ts';
import { MINUTE_MS, SECOND_MS } from '../../../shared/units.ts';
import { SAMPLE_MS, sampleAlarm } from '../../support/notice-samples.ts';
import { openOutbox } from '../../support/open-outbox.ts';
import { openBatch, openTent, type Tent } from '../../support/open-tent.ts';
import { openPushEndpoint } from '../../support/push-endpoint.ts';
import { openWebhookReceiver } from '../../support/webhook-receiver.ts';

async function openTold(): Promise<Tent & { readonly hook: string; addPhone(): Promise<string> }> {
  const tent = await openTent();
  const [push, receiver] = [await openPushEndpoint(), await openWebhookReceiver()];
  onTestFinished(push.close);
  onTestFinished(receiver.close);
  const webhooks = [{ name: 'Hook', url: receiver.url, allowLocal: true }];
  const put = await tent.api.put<ChannelsView>('/channels', { webhooks });
  await openBatch(tent);
  const addPhone = async () => {
    const { endpoint, keys } = push.subscribe();
    return (await tent.api.post<{ id: string }>('/phones', { subscription: { endpoint, keys } })).body.id;
  };
  return { ...tent, hook: `webhook:${put.body.webhooks[0]?.id}`, addPhone };
}

/** Notices of the alarms in the store, as `kind → target`. */
async function noticesOf(tent: Tent): Promise<string[]> {
  const { items } = await tent.app.store.alarms.page({ limit: 10 });
  const notices = await Promise.all(items.map(({ id }) => tent.app.store.notices.ofAlarm(id)));
  return notices.flat().map(({ kind, targetId }) => `${kind} → ${targetId}`);
}

async function takeAll(tent: Tent): Promise<void> {
  for (const { id } of await tent.alarms()) await tent.api.post(`/alarms/${id}/acknowledge`, {});
}

const targetsIn = (notices: readonly { targetId: string }[]) => notices.map(({ targetId }) => targetId);

describe('a return to normal', () => {
  it('is told to those who were told of the alarm, not to a phone that came when somebody had it already', async () => {
    const tent = await openTold();
    await tent.stay(28.5, MINUTE_MS);
    await takeAll(tent);
    const phone = await tent.addPhone();
    tent.clock.advance(10 * SECOND_MS);
    await tent.stay(26, MINUTE_MS);
    expect(await noticesOf(tent)).toEqual([`raised → ${tent.hook}`, `taken → ${tent.hook}`, `returned → ${tent.hook}`]);
    expect(phone).not.toBe('');
  });

  it('is told to the same after the service was stopped and started in between', async () => {
    const tent = await openTold();
    const { hook } = tent;
    await tent.stay(28.5, MINUTE_MS);
    await takeAll(tent);
    const phone = await tent.addPhone();
    const again = await tent.reopen(10 * SECOND_MS);
    await again.stay(26, MINUTE_MS);
    expect(await noticesOf(again)).toEqual([`raised → ${hook}`, `taken → ${hook}`, `returned → ${hook}`]);
    again.clock.advance(10 * SECOND_MS);
    await again.stay(28.5, MINUTE_MS);
    expect((await noticesOf(again)).filter((one) => one.startsWith('raised')).sort()).toEqual(
      [`raised → ${hook}`, `raised → ${hook}`, `raised → ${phone}`].sort(),
    );
  });
});

describe('the book of who was told', () => {
  it('reads every alarm that is not over, however many there are, and none that is', async () => {
    const outbox = await openOutbox(SAMPLE_MS);
    const hook = { channel: 'webhook', targetId: 'webhook', personId: null } as const;
    for (let n = 0; n < 503; n += 1)
      await outbox.tell({ id: `alarm-${n}`, occurredMs: SAMPLE_MS - n }, 'raised', [hook], SAMPLE_MS);
    await outbox.tell({ id: 'over', state: 'normal', level: 0 }, 'raised', [hook], SAMPLE_MS);
    const book = await createToldBook(outbox.store);
    for (const id of ['alarm-0', 'alarm-499', 'alarm-500', 'alarm-502'])
      expect(targetsIn(book.of(id))).toEqual(['webhook']);
    expect([...book.of('over')]).toEqual([]);
  });

  it('learns whom it is told of, and forgets what is over', async () => {
    const book = await createToldBook((await openOutbox(SAMPLE_MS)).store);
    const notice = {
      kind: 'raised',
      channel: 'web-push',
      chamberId: 'c2',
      decidedMs: SAMPLE_MS,
      urgent: true,
    } as const;
    book.add([
      { ...notice, id: '1', alarmId: sampleAlarm.id, targetId: 'phone-1', personId: null },
      { ...notice, id: '2', alarmId: sampleAlarm.id, targetId: 'phone-2', personId: null },
    ]);
    expect(targetsIn(book.of(sampleAlarm.id))).toEqual(['phone-1', 'phone-2']);
    book.forget(sampleAlarm.id);
    expect([...book.of(sampleAlarm.id)]).toEqual([]);
  });
});
