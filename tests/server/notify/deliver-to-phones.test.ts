// Phones that are gone, and what one phone or program hears of the course of one alarm.
import { describe, expect, test } from 'vitest';
import { finding } from '../../../shared/finding.ts';
import { SAMPLE_MS } from '../../support/notice-samples.ts';
import { openAlertSite, phoneOne, phoneTwo, stateOf, webhook } from '../../support/open-alert-site.ts';

const SECOND_MS = 1_000;
const MINUTE_MS = 60_000;

describe('phones', () => {
  test.each([404, 410])('one that takes no more alerts (%i) is removed, and the reason is kept', async (status) => {
    const gone: object[] = [];
    const site = await openAlertSite({ onPhoneGone: (phone, reason) => gone.push({ id: phone.id, reason }) });
    site.push.answerWith({ status }, site.phones[0].endpoint);
    await site.tell({}, 'raised', [phoneOne, phoneTwo], SAMPLE_MS);
    await site.delivery.deliverNotices();
    expect(gone).toEqual([{ id: 'phone-1', reason: finding('phoneTakesNoMore', status) }]);
    expect((await site.store.phones.all()).map((one) => one.id)).toEqual(['phone-2']);
    const result = `this phone takes no more alerts (${status}): add it again on the phone itself`;
    expect(await stateOf(site.store)).toMatchObject([{ state: 'given-up', result }, { state: 'sent' }]);
  });

  test('what still waits for a phone that was removed is given up', async () => {
    const site = await openAlertSite();
    await site.tell({}, 'raised', [phoneOne], SAMPLE_MS);
    await site.store.phones.remove('phone-1');
    await site.delivery.deliverNotices();
    expect(await stateOf(site.store)).toMatchObject([{ state: 'given-up', result: 'the phone was removed' }]);
  });

  test('a message that is too large is not sent again, and the phone stays', async () => {
    const site = await openAlertSite();
    site.push.answerWith({ status: 413 });
    await site.tell({}, 'raised', [phoneOne], SAMPLE_MS);
    await site.delivery.deliverNotices();
    const result = 'the message is too large for the push service (413)';
    expect(await stateOf(site.store)).toMatchObject([{ state: 'given-up', result }]);
    await expect(site.store.phones.get('phone-1')).resolves.toMatchObject({
      lastResult: finding('pushTooLarge', 413),
    });
  });
});

describe('the course of one alarm', () => {
  test('a phone that could not be reached gets only the last of it: the older would say what is over', async () => {
    const site = await openAlertSite();
    site.push.answerWith({ status: 500 });
    await site.tell({}, 'raised', [phoneOne], SAMPLE_MS);
    await site.delivery.deliverNotices();
    site.push.answerWith(null);
    site.clock.ms = SAMPLE_MS + 8 * MINUTE_MS;
    const over = { level: 0, state: 'returned-unacknowledged', returnedMs: site.clock.ms } as const;
    await site.tell(over, 'returned', [phoneOne], site.clock.ms);
    await site.delivery.deliverNotices();
    expect(site.push.received).toMatchObject([{ title: '▲ Chamber 2: heat is over', data: { kind: 'returned' } }]);
    expect(await stateOf(site.store)).toMatchObject([
      { kind: 'raised', state: 'given-up', result: 'replaced by a later notice of the same alarm' },
      { kind: 'returned', state: 'sent' },
    ]);
  });

  test('a webhook that could not be reached gets all of it, in order', async () => {
    const site = await openAlertSite();
    site.receiver.answerWith({ status: 500 });
    await site.tell({}, 'raised', [webhook], SAMPLE_MS);
    await site.delivery.deliverNotices();
    site.clock.ms += SECOND_MS;
    await site.tell({ level: 2 }, 'escalated', [webhook], site.clock.ms);
    await site.delivery.deliverNotices();
    expect(await stateOf(site.store)).toMatchObject([
      { state: 'waiting', result: 'the webhook is in trouble (500)' },
      { state: 'waiting', result: 'waits for an earlier notice of the same alarm' },
    ]);
    site.receiver.answerWith({ status: 204 });
    site.clock.ms += MINUTE_MS;
    await site.delivery.deliverNotices();
    const taken = site.receiver.calls.filter((call) => call.answer !== 'stall' && call.answer.status === 204);
    expect(taken.map((call) => call.message.kind)).toEqual(['raised', 'escalated']);
  });
});
