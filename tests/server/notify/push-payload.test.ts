import { describe, expect, test } from 'vitest';
import { buildNoticeMessage, buildTestMessage } from '../../../server/notify/notice-message.ts';
import { writePushPayload } from '../../../server/notify/push-payload.ts';
import { sampleFacts, sampleNotice, sampleOccasion } from '../../support/notice-samples.ts';

const message = buildNoticeMessage(sampleNotice, sampleFacts, sampleOccasion);

test('a push is a declarative message with what the page needs to find the alarm', () => {
  expect(JSON.parse(writePushPayload(message, 'receipt'))).toEqual({
    web_push: 8030,
    notification: {
      title: message.title,
      body: message.body,
      navigate: 'https://takewell.example/chambers/c2?alarm=c2.heat.mm7',
      tag: 'c2.heat.mm7',
      data: {
        ...{ alarmId: 'c2.heat.mm7', chamberId: 'c2', kind: 'raised', at: '2026-03-01T12:04:00Z' },
        ...{ noticeId: sampleNotice.id, receipt: 'receipt', acknowledge: null },
      },
    },
  });
});

test('a test push carries no alarm', () => {
  const { data, tag } = JSON.parse(
    writePushPayload(buildTestMessage(sampleOccasion, 'phone-1'), 'receipt'),
  ).notification;
  expect(data).toMatchObject({ alarmId: null, chamberId: null, kind: 'test', at: '2026-03-01T12:04:00Z' });
  expect(tag).toBe('test');
});

describe('the limit of 3,000 bytes', () => {
  const bytesOf = (text: string) => Buffer.byteLength(text);
  const bare = bytesOf(writePushPayload({ ...message, body: '' }, 'receipt'));

  test('a body that just fits is left whole', () => {
    const payload = writePushPayload({ ...message, body: 'x'.repeat(2_999 - bare) }, 'receipt');
    expect(bytesOf(payload)).toBe(2_999);
    expect(payload).not.toContain('…');
  });

  test.each([
    ['one byte too long', 'x'.repeat(3_000 - bare)],
    ['far too long', 'x'.repeat(20_000)],
    ['characters of four bytes', '🌱'.repeat(3_000)],
    ['characters that JSON writes with six bytes', '\u0001'.repeat(3_000)],
  ])('%s: the body loses its end and says so', (_, body) => {
    const payload = writePushPayload({ ...message, body }, 'receipt');
    expect(bytesOf(payload)).toBeLessThan(3_000);
    expect(JSON.parse(payload).notification.body).toMatch(/…$/u);
    expect(JSON.parse(payload).notification.title).toBe(message.title);
  });

  test('a body that is cut keeps as much as fits', () => {
    expect(bytesOf(writePushPayload({ ...message, body: 'x'.repeat(20_000) }, 'receipt'))).toBeGreaterThan(2_900);
  });

  test('when the title alone is too long it loses its end too', () => {
    const payload = writePushPayload({ ...message, title: 'x'.repeat(9_000) }, 'receipt');
    expect(bytesOf(payload)).toBeLessThan(3_000);
    expect(JSON.parse(payload).notification).toMatchObject({ body: '', title: expect.stringMatching(/…$/u) });
  });
});

test('what acknowledges it without signing in goes along, and stays when the text is cut', () => {
  const acknowledge = { token: 'one-use', url: 'https://takewell.example/acknowledge/one-use' };
  const payload = writePushPayload({ ...message, acknowledge, body: 'x'.repeat(9_000) }, 'receipt', 900);
  expect(Buffer.byteLength(payload)).toBeLessThan(900);
  expect(JSON.parse(payload).notification.data).toMatchObject({ acknowledge: 'one-use', receipt: 'receipt' });
});
