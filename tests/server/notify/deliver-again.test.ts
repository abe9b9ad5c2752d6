// Trying again, and how long: real HTTP, real store, the clock turned by hand.
import { describe, expect, onTestFinished, test, vi } from 'vitest';
import { SAMPLE_MS } from '../../support/notice-samples.ts';
import { openAlertSite, phoneOne, stateOf } from '../../support/open-alert-site.ts';

const SECOND_MS = 1_000;
const MINUTE_MS = 60_000;
const HOUR_MS = 3_600_000;

describe('trying again', () => {
  test('a push service in trouble is tried after 5 s, then after 10 s, until it takes the notice', async () => {
    const site = await openAlertSite();
    await site.tell({}, 'raised', [phoneOne], SAMPLE_MS);
    site.push.answerWith({ status: 500 });
    const steps: [string, number, number][] = [
      ['at once', 0, 1],
      ['not before 5 s', 5 * SECOND_MS - 1, 1],
      ['at 5 s', 5 * SECOND_MS, 2],
      ['not before 10 s more', 15 * SECOND_MS - 1, 2],
    ];
    for (const [when, afterMs, asked] of steps) {
      site.clock.ms = SAMPLE_MS + afterMs;
      await site.delivery.deliverNotices();
      expect([when, site.push.asked()]).toEqual([when, asked]);
    }
    expect(await stateOf(site.store)).toEqual([
      { kind: 'raised', state: 'waiting', result: 'the push service is in trouble (500)' },
    ]);
    site.push.answerWith(null);
    site.clock.ms = SAMPLE_MS + 15 * SECOND_MS;
    await site.delivery.deliverNotices();
    expect(site.push.received).toHaveLength(1);
    expect(await stateOf(site.store)).toMatchObject([{ state: 'sent' }]);
  });

  test('a push service that asks for two minutes is left alone for two minutes', async () => {
    const site = await openAlertSite();
    await site.tell({}, 'raised', [phoneOne], SAMPLE_MS);
    site.push.answerWith({ status: 429, headers: { 'retry-after': '120' } });
    await site.delivery.deliverNotices();
    site.push.answerWith(null);
    site.clock.ms = SAMPLE_MS + 2 * MINUTE_MS - 1;
    await site.delivery.deliverNotices();
    expect(site.push.received).toHaveLength(0);
    site.clock.ms = SAMPLE_MS + 2 * MINUTE_MS;
    await site.delivery.deliverNotices();
    expect(site.push.received).toHaveLength(1);
  });

  test('it wakes by itself when the next try is due', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    onTestFinished(() => {
      vi.useRealTimers();
    });
    const site = await openAlertSite();
    await site.tell({}, 'raised', [phoneOne], SAMPLE_MS);
    site.push.answerWith({ status: 503 });
    await site.delivery.deliverNotices();
    await vi.waitFor(() => expect(vi.getTimerCount()).toBe(1));
    site.push.answerWith(null);
    site.clock.ms = SAMPLE_MS + 5 * SECOND_MS;
    vi.advanceTimersByTime(5 * SECOND_MS);
    await site.push.whenAsked(2);
    expect(site.push.received).toHaveLength(1);
  });

  test('a notice told more than 15 min after it was decided says so', async () => {
    const site = await openAlertSite();
    await site.tell({}, 'raised', [phoneOne], SAMPLE_MS);
    site.clock.ms = SAMPLE_MS + 25 * MINUTE_MS;
    await site.delivery.deliverNotices();
    expect(site.push.received[0]?.body).toMatch(/^Told late: decided at 13:04, 25 min ago\./);
  });

  test.each([
    ['at six hours it is still told', 6 * HOUR_MS, 1, 'sent'],
    ['a millisecond later it is history', 6 * HOUR_MS + 1, 0, 'given-up'],
  ])('after an outage: %s', async (_, ageMs, told, state) => {
    const site = await openAlertSite();
    await site.tell({}, 'raised', [phoneOne], SAMPLE_MS);
    site.clock.ms = SAMPLE_MS + ageMs;
    await site.delivery.deliverNotices();
    expect(site.push.received).toHaveLength(told);
    expect(await stateOf(site.store)).toMatchObject([{ state }]);
  });

  test('a notice given up as history says why, and what stood in its way before', async () => {
    const site = await openAlertSite();
    await site.tell({}, 'raised', [phoneOne], SAMPLE_MS);
    site.push.answerWith({ status: 500 });
    await site.delivery.deliverNotices();
    site.clock.ms = SAMPLE_MS + 6 * HOUR_MS + 1;
    await site.delivery.deliverNotices();
    const before = 'the push service is in trouble (500)';
    expect((await stateOf(site.store))[0]?.result).toBe(
      `older than 6 h when it could be told: kept as history (before: ${before})`,
    );
  });
});
