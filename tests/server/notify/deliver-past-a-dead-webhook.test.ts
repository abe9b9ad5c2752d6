// A webhook that is dead harms nobody else.
import { describe, expect, test } from 'vitest';
import { SAMPLE_MS } from '../../support/notice-samples.ts';
import { openAlertSite, phoneOne, phoneTwo, stateOf, webhook } from '../../support/open-alert-site.ts';

const MINUTE_MS = 60_000;

describe('a webhook that is dead', () => {
  test('and keeps every request waiting does not keep a push waiting', async () => {
    const site = await openAlertSite({ closeWithinMs: 0 });
    site.receiver.answerWith('stall');
    for (let n = 0; n < 20; n += 1)
      await site.tell({ id: `alarm-${n}` }, 'raised', [webhook, phoneOne, phoneTwo], SAMPLE_MS);
    site.delivery.wake();
    await site.receiver.whenCalled(4);
    await site.push.whenAsked(40);
    await site.tell({ id: 'later' }, 'raised', [phoneOne], SAMPLE_MS);
    site.delivery.wake();
    await site.push.whenAsked(41);
    expect(site.receiver.calls).toHaveLength(4);
    await site.delivery.close();
    const states = (await stateOf(site.store, 'alarm-0')).map((one) => one.state);
    expect(states.toSorted()).toEqual(['sent', 'sent', 'waiting']);
  });

  test('and has more waiting than is read at once does not keep a push waiting', async () => {
    const site = await openAlertSite({ closeWithinMs: 0 });
    site.receiver.answerWith('stall');
    for (let n = 0; n < 210; n += 1) await site.tell({ id: `alarm-${n}` }, 'raised', [webhook], SAMPLE_MS - 1);
    site.delivery.wake();
    await site.receiver.whenCalled(4);
    await site.tell({ id: 'later' }, 'raised', [phoneOne], SAMPLE_MS);
    site.delivery.wake();
    await site.push.whenAsked(1);
    expect(site.receiver.calls).toHaveLength(4);
  });

  test('is left alone after a few failures, and gets everything when it is back', async () => {
    const site = await openAlertSite();
    site.receiver.answerWith({ status: 500 });
    for (let n = 0; n < 30; n += 1) await site.tell({ id: `alarm-${n}` }, 'raised', [webhook], SAMPLE_MS);
    await site.delivery.deliverNotices();
    const tried = site.receiver.calls.length;
    expect(tried).toBeLessThan(10);
    await expect(stateOf(site.store, 'alarm-29')).resolves.toMatchObject([
      { state: 'waiting', result: 'not tried: the service behind it did not answer several times' },
    ]);
    site.receiver.answerWith({ status: 204 });
    for (const _ of [1, 2]) {
      site.clock.ms += MINUTE_MS;
      await site.delivery.deliverNotices();
    }
    expect(new Set(site.receiver.calls.slice(tried).map((call) => call.noticeId)).size).toBe(30);
    expect(site.receiver.calls).toHaveLength(tried + 30);
  });

  test('and removed is told nothing more', async () => {
    const site = await openAlertSite();
    await site.tell({}, 'raised', [webhook], SAMPLE_MS);
    await site.setChannels({ webhooks: [] });
    await site.delivery.deliverNotices();
    expect(await stateOf(site.store)).toMatchObject([{ state: 'given-up', result: 'the webhook was removed' }]);
    expect(site.receiver.calls).toEqual([]);
  });
});
