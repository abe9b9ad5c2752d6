// The one message that stands for many.
import { expect, test } from 'vitest';
import { buildNoticeMessage } from '../../../server/notify/notice-message.ts';
import { writePushPayload } from '../../../server/notify/push-payload.ts';
import { sampleFacts, sampleNotice, sampleOccasion } from '../../support/notice-samples.ts';

const notice = { ...sampleNotice, kind: 'flood' } as const;
const flood = { standing: 12, critical: 2, chambers: ['Chamber 2', 'Chamber 5'] };
const build = (facts: typeof flood) => buildNoticeMessage(notice, { ...sampleFacts, flood: facts }, sampleOccasion);

test('says how many, where and what to do, and opens the list of alarms', () => {
  expect(build(flood)).toMatchObject({
    kind: 'flood',
    title: 'Many alarms at once: 12 stand, 2 critical',
    body: 'In Chamber 2, Chamber 5.\nOpen the list and begin with the worst. Until it calms down only critical alarms are told one by one.',
    url: 'https://takewell.example/alarms',
    tag: 'flood',
    facts: null,
  });
});

test('says only what is so', () => {
  expect(build({ standing: 1, critical: 0, chambers: [] }).title).toBe('Many alarms at once: 1 stands');
  expect(build({ standing: 1, critical: 0, chambers: [] }).body).toMatch(/^Open the list/);
});

test('names no alarm in the push either', () => {
  expect(JSON.parse(writePushPayload(build(flood), 'receipt'))).toMatchObject({
    notification: { tag: 'flood', data: { alarmId: null, chamberId: null, kind: 'flood' } },
  });
});
