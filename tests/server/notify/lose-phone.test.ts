// A phone that takes no more: dropped, and its person told through what else reaches them.
import { expect, test } from 'vitest';
import { isHopeless } from '../../../server/notify/lose-phone.ts';
import { finding } from '../../../shared/finding.ts';
import { SAMPLE_MS } from '../../support/notice-samples.ts';
import { openAlertSite, phoneOne, phoneTwo } from '../../support/open-alert-site.ts';

const HOUR_MS = 3_600_000;

test.each([
  ['a third refusal is not enough', 2, SAMPLE_MS, 'message', false],
  ['a fourth is', 3, SAMPLE_MS, 'message', true],
  ['a refused signature may come of a wrong clock', 3, SAMPLE_MS - 6 * HOUR_MS + 1, 'signature', false],
  ['for six hours it does not', 3, SAMPLE_MS - 6 * HOUR_MS, 'signature', true],
  ['no answer is no refusal', 30, SAMPLE_MS, undefined, false],
] as const)('%s', (_why, refusals, refusedSinceMs, refusal, expected) => {
  expect(isHopeless({ refusals, refusedSinceMs }, refusal === undefined ? {} : { refusal }, SAMPLE_MS)).toBe(expected);
});

test('one that is refused again and again is dropped, and the other phone of its person says so', async () => {
  const site = await openAlertSite({ targetsOf: () => [phoneOne, phoneTwo] });
  site.push.answerWith({ status: 400 }, site.phones[0].endpoint);
  await site.tell({}, 'raised', [phoneOne], SAMPLE_MS);
  for (let n = 0; n < 4; n += 1) {
    await site.delivery.deliverNotices();
    site.clock.ms += 60_000;
  }
  await site.delivery.deliverNotices();
  await expect(site.store.phones.get('phone-1')).resolves.toBeNull();
  await expect(site.store.phones.lost('crew-1')).resolves.toMatchObject([
    { id: 'phone-1', reason: finding('pushRefused', 400) },
  ]);
  expect(site.push.received).toMatchObject([
    { endpoint: site.phones[1].endpoint, title: '“phone-1” gets no more alerts', data: { kind: 'phone-lost' } },
  ]);
});
