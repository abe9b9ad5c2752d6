// What an alert shows. Whatever arrives, there is a notice: a push that shows nothing is punished by the browser.
import { describe, expect, test } from 'vitest';
import { pathWithin, readPush } from '../../web/push-message.ts';

const origin = 'https://takewell.example';
const sent = (kind: string) =>
  JSON.stringify({
    web_push: 8030,
    notification: {
      title: '▲ Chamber 2: hot 29.1 °C',
      body: 'Limit 28 for 4 min.',
      navigate: `${origin}/chambers/c2?alarm=a7`,
      tag: 'a7',
      data: { alarmId: kind === 'test' ? null : 'a7', chamberId: 'c2', kind, at: '2026-03-02T07:00:00Z' },
    },
  });

test('an alarm opens its chamber, replaces its earlier notice and can be acknowledged', () => {
  expect(readPush(sent('raised'), origin)).toEqual({
    title: '▲ Chamber 2: hot 29.1 °C',
    body: 'Limit 28 for 4 min.',
    path: '/chambers/c2?alarm=a7',
    tag: 'a7',
    alarmId: 'a7',
    isUrgent: true,
    canAcknowledge: true,
    token: '',
    noticeId: '',
    receipt: '',
    language: 'en',
  });
});

test('what the worker adds is in the language of the message, else of the browser', () => {
  const dutch = JSON.stringify({ notification: { title: 'Heet', lang: 'nl' } });
  expect(readPush(dutch, origin, ['es'])).toMatchObject({
    language: 'nl',
    body: 'Open Takewell om te zien wat het is.',
  });
  expect(readPush('', origin, ['es-MX', 'en'])).toMatchObject({ language: 'es', title: 'Takewell' });
});

describe('only an alarm that stands can be acknowledged and is urgent', () => {
  test.each([
    ['raised', true],
    ['escalated', true],
    ['asked-anew', true],
    ['passed-on', true],
    ['repeated', true],
    ['taken', false],
    ['returned', false],
    ['test', false],
  ])('%s: %s', (kind, expected) => {
    const { isUrgent, canAcknowledge } = readPush(sent(kind), origin);
    expect({ isUrgent, canAcknowledge }).toEqual({ isUrgent: expected, canAcknowledge: expected });
  });
});

test.each(['', 'not json', 'null', '[]', '{"notification":7}'])('%j still gives a notice with words', (payload) => {
  const message = readPush(payload, origin);
  expect(message.title).not.toBe('');
  expect(message.body).not.toBe('');
  expect(message.path).toBe('/');
});

test.each([
  ['https://elsewhere.example/x', '/'],
  ['javascript:alert(1)', '/'],
  ['/chambers/c1', '/chambers/c1'],
])('the address %s leads to %s', (address, path) => {
  expect(pathWithin(address, origin)).toBe(path);
});
