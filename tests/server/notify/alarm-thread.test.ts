import { expect, test } from 'vitest';
import { isReplaced, threadsOf, waitingInOrder } from '../../../server/notify/alarm-thread.ts';
import type { Notice } from '../../../server/store/store.ts';
import { SAMPLE_MS, sampleNotice } from '../../support/notice-samples.ts';

function notice(id: string, change: Partial<Notice> = {}): Notice {
  return {
    ...sampleNotice,
    attempts: 0,
    state: 'waiting',
    result: null,
    resultMs: null,
    confirmedMs: null,
    ...change,
    id,
  };
}

test('notices are put together by alarm and target', () => {
  const threads = threadsOf(
    [
      notice('a'),
      notice('b', { targetId: 'phone-2' }),
      notice('c', { kind: 'returned' }),
      notice('d', { alarmId: 'other' }),
    ],
    SAMPLE_MS,
  );
  expect(threads.map((thread) => thread.due.map((one) => one.id))).toEqual([['a', 'c'], ['b'], ['d']]);
});

test('what is urgent goes first, then what waits longest', () => {
  const threads = threadsOf(
    [
      notice('calm', { alarmId: '1', urgent: false, decidedMs: 1 }),
      notice('later', { alarmId: '2', decidedMs: 3 }),
      notice('earlier', { alarmId: '3', decidedMs: 2 }),
    ],
    9,
  );
  expect(threads.map((thread) => thread.due[0]?.id)).toEqual(['earlier', 'later', 'calm']);
});

test('what waits of a thread comes in the order of its course, without what is done and without other targets', () => {
  const due = notice('returned', { kind: 'returned', decidedMs: 9 });
  const [thread] = threadsOf([due], 9);
  const ofAlarm = [
    due,
    notice('escalated', { kind: 'escalated', decidedMs: 5 }),
    notice('raised', { kind: 'raised', decidedMs: 5 }),
    notice('done', { state: 'sent' }),
    notice('elsewhere', { targetId: 'phone-2' }),
  ];
  expect(thread && waitingInOrder(ofAlarm, thread).map((one) => one.id)).toEqual(['raised', 'escalated', 'returned']);
});

test.each([
  ['a phone needs only the last', 'web-push', 'crew-1', [true, true, false]],
  ['so does a mailbox: ten mails at once would be a storm', 'email', 'crew-1', [true, true, false]],
  ['so does somebody who is told through a gateway', 'webhook', 'crew-1', [true, true, false]],
  ['a program gets each', 'webhook', null, [false, false, false]],
] as const)('%s', (_, channel, personId, replaced) => {
  const waiting = ['a', 'b', 'c'].map((id) => notice(id, { channel, personId }));
  expect(waiting.map((_one, index) => isReplaced(waiting, index))).toEqual(replaced);
});

test('a notice of a flood is sent whatever comes after, and replaces nothing', () => {
  const flood = notice('flood', { kind: 'flood' });
  const raised = notice('raised', { kind: 'raised' });
  expect([flood, raised].map((_, index) => isReplaced([flood, raised], index))).toEqual([false, false]);
  expect(isReplaced([raised, flood], 0)).toBe(false);
});

test('what is more than six hours old is put together by target alone', () => {
  const due = [
    notice('a', { alarmId: '1' }),
    notice('b', { alarmId: '2' }),
    notice('c', { alarmId: '1', targetId: 'phone-2' }),
    notice('new', { alarmId: '1', decidedMs: SAMPLE_MS + 1 }),
  ];
  const threads = threadsOf(due, SAMPLE_MS + 6 * 60 * 60_000 + 1);
  expect(threads.map(({ alarmId, due: own }) => [alarmId, own.map(({ id }) => id)])).toEqual([
    [null, ['a', 'b']],
    [null, ['c']],
    ['1', ['new']],
  ]);
});
