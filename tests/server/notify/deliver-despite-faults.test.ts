// Faults of our own side: a crash, a full or damaged store.
import { describe, expect, test } from 'vitest';
import type { Store } from '../../../server/store/store.ts';
import { SAMPLE_MS } from '../../support/notice-samples.ts';
import { openAlertSite, phoneOne, phoneTwo, stateOf, webhook, withNotices } from '../../support/open-alert-site.ts';
import { openDelivery } from '../../support/open-delivery.ts';

const MINUTE_MS = 60_000;

const letOthersRun = () => new Promise<void>((resolve) => setImmediate(resolve));

describe('what fails on our own side', () => {
  test('a crash between sending and recording repeats the notice once, with the same id', async () => {
    const site = await openAlertSite();
    const [draft] = await site.tell({}, 'raised', [webhook], SAMPLE_MS);
    // The process that dies here never writes the result.
    const dying: Store = { ...site.store, commit: () => Promise.reject(new Error('the process is gone')) };
    const before = await openDelivery(dying, site.clock);
    await before.delivery.deliverNotices();
    await before.delivery.close();
    await site.delivery.deliverNotices();
    await site.delivery.deliverNotices();
    expect(site.receiver.calls.map((call) => call.noticeId)).toEqual([draft?.id, draft?.id]);
    expect(await stateOf(site.store)).toMatchObject([{ state: 'sent' }]);
  });

  test('a store that cannot write the result does not make the same notice ring again', async () => {
    const site = await openAlertSite();
    let isFull = true;
    let looks = 0;
    const looked = withNotices(site.store, {
      due: async (...query) => {
        looks += 1;
        await letOthersRun();
        return site.store.notices.due(...query);
      },
    });
    const full: Store = {
      ...looked,
      commit: (work) => (isFull ? Promise.reject(new Error('disk full')) : site.store.commit(work)),
    };
    const { delivery, logged } = await openDelivery(full, site.clock);
    await site.tell({}, 'raised', [webhook, phoneOne], SAMPLE_MS);
    for (const _ of [1, 2, 3]) {
      await delivery.deliverNotices();
      site.clock.ms += MINUTE_MS;
    }
    expect([site.receiver.calls.length, site.push.received.length]).toEqual([1, 1]);
    for (let turn = 0; turn < 50; turn += 1) await letOthersRun();
    // It is not asked for again and again meanwhile: one look a pass, and one after what was under way.
    expect(looks).toBeLessThan(10);
    expect(logged).toContain('error: the result of a notice could not be stored');
    isFull = false;
    await delivery.deliverNotices();
    expect(await stateOf(site.store)).toMatchObject([{ state: 'sent' }, { state: 'sent' }]);
    expect([site.receiver.calls.length, site.push.received.length]).toEqual([1, 1]);
  });

  test('nor does a later notice of the same alarm', async () => {
    const site = await openAlertSite();
    const full: Store = { ...site.store, commit: () => Promise.reject(new Error('disk full')) };
    const { delivery } = await openDelivery(full, site.clock);
    await site.tell({}, 'raised', [webhook], SAMPLE_MS);
    await delivery.deliverNotices();
    await site.tell({}, 'escalated', [webhook], SAMPLE_MS + 1);
    site.clock.ms += 1;
    await delivery.deliverNotices();
    expect(site.receiver.calls.map((call) => call.message.kind)).toEqual(['raised', 'escalated']);
  });

  test('a store that cannot be read is logged, and the pass ends without throwing', async () => {
    const site = await openAlertSite();
    const broken = withNotices(site.store, { due: () => Promise.reject(new Error('no such disk')) });
    const { delivery, logged } = await openDelivery(broken, site.clock);
    await expect(delivery.deliverNotices()).resolves.toBeUndefined();
    expect(logged).toEqual(['error: the outbox of notices cannot be read']);
  });

  test('an error with one notice is its result, and the others are told', async () => {
    const site = await openAlertSite();
    const { get } = site.store.phones;
    const phones = { ...site.store.phones };
    phones.get = (id) => (id === 'phone-1' ? Promise.reject(new Error('damaged row')) : get(id));
    const { delivery } = await openDelivery({ ...site.store, phones }, site.clock);
    await site.tell({}, 'raised', [phoneOne, phoneTwo], SAMPLE_MS);
    await delivery.deliverNotices();
    expect(await stateOf(site.store)).toMatchObject([
      { state: 'waiting', result: 'could not be told: damaged row' },
      { state: 'sent' },
    ]);
  });

  test('an alarm that cannot be looked up in the outbox is tried again with the reason', async () => {
    const site = await openAlertSite();
    const broken = withNotices(site.store, { ofAlarm: () => Promise.reject(new Error('damaged index')) });
    const { delivery } = await openDelivery(broken, site.clock);
    await site.tell({}, 'raised', [phoneOne], SAMPLE_MS);
    await delivery.deliverNotices();
    expect(await stateOf(site.store)).toMatchObject([{ state: 'waiting', result: 'could not be told: damaged index' }]);
  });

  test('settings of the webhook that cannot be read are a reason, not a crash', async () => {
    const site = await openAlertSite();
    await site.store.settings.put('channels', { webhooks: 'nonsense' });
    await site.tell({}, 'raised', [webhook], SAMPLE_MS);
    await site.delivery.deliverNotices();
    const [notice] = await stateOf(site.store);
    expect(notice?.state).toBe('waiting');
    expect(notice?.result).toMatch(/^could not be told: /);
  });
});
