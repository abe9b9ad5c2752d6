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

  test('six hours are still news', async () => {
    const site = await openAlertSite();
    await site.tell({}, 'raised', [phoneOne], SAMPLE_MS);
    site.clock.ms = SAMPLE_MS + 6 * HOUR_MS;
    await site.delivery.deliverNotices();
    expect(site.push.received).toMatchObject([{ title: '▲ Chamber 2: hot 29.1 °C' }]);
  });
});

describe('what could not be told for six hours', () => {
  async function openLateSite() {
    const site = await openAlertSite();
    site.push.answerWith({ status: 500 });
    await site.tell({ id: 'heat' }, 'raised', [phoneOne], SAMPLE_MS);
    await site.tell({ id: 'dry', rule: 'dry', value: 71, limit: 80 }, 'raised', [phoneOne], SAMPLE_MS + 1);
    await site.delivery.deliverNotices();
    site.push.answerWith(null);
    site.clock.ms = SAMPLE_MS + 6 * HOUR_MS + 2;
    return site;
  }

  test('is told as history, all of it in one message', async () => {
    const site = await openLateSite();
    await site.delivery.deliverNotices();
    expect(site.push.received).toMatchObject([
      { title: 'While we could not reach you: 2 alarms', data: { kind: 'history' } },
    ]);
    expect(site.push.received[0]?.body.split('\n')[0]).toMatch(
      /^Chamber 2: Hot: 29.1 °C, limit 28 for 6 h 4 min, since 13:00\.$/,
    );
    expect(site.push.received[0]?.headers.urgency).toBe('normal');
    for (const alarm of ['heat', 'dry'])
      expect(await stateOf(site.store, alarm)).toMatchObject([
        { state: 'sent', result: expect.stringMatching(/^told as history in one message; accepted by /) },
      ]);
  });

  test('waits on while nobody can be reached, and keeps its name when it is sent again', async () => {
    const site = await openLateSite();
    site.push.answerWith({ status: 500 });
    await site.delivery.deliverNotices();
    expect(await stateOf(site.store, 'heat')).toMatchObject([{ state: 'waiting' }]);
    site.push.answerWith(null);
    site.clock.ms += HOUR_MS;
    await site.delivery.deliverNotices();
    expect(site.push.received).toMatchObject([
      { data: { noticeId: expect.stringMatching(/^history\.[0-9a-f]{32}$/) } },
    ]);
  });

  test('does not take along what is news', async () => {
    const site = await openLateSite();
    await site.tell({ id: 'cold', rule: 'cold', limit: 18, value: 12 }, 'raised', [phoneOne], site.clock.ms);
    await site.delivery.deliverNotices();
    expect(site.push.received.map(({ title }) => title).toSorted()).toEqual([
      'While we could not reach you: 2 alarms',
      '▲ Chamber 2: cold 12.0 °C'.replace('▲', '▼'),
    ]);
  });

  test('is given up after seven days, with what stood in its way', async () => {
    const site = await openLateSite();
    site.clock.ms = SAMPLE_MS + 7 * 24 * HOUR_MS + 2;
    await site.delivery.deliverNotices();
    expect(site.push.received).toEqual([]);
    expect(await stateOf(site.store, 'heat')).toMatchObject([
      {
        state: 'given-up',
        result: 'older than 7 days when it could be told (before: the push service is in trouble (500))',
      },
    ]);
  });
});
