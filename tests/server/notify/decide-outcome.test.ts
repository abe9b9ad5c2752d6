import { expect, test } from 'vitest';
import type { SendResult } from '../../../server/notify/channels/channel.ts';
import { decideOutcome, type Outcome, retryUnlessForgotten } from '../../../server/notify/decide-outcome.ts';
import { finding } from '../../../shared/finding.ts';

const DECIDED_MS = 1_000_000_000;
const NOW_MS = DECIDED_MS + 60_000;
const SEVEN_DAYS_MS = 7 * 24 * 3_600_000;
const failed = { delivered: false, retryable: true, reason: finding('mailNoAnswer', 'mail.example') } as const;
const noAnswer = 'mail.example did not answer in time';

const rows: [string, SendResult, number, Outcome][] = [
  [
    'delivered',
    { delivered: true, detail: finding('webhookTook', 204) },
    3,
    { type: 'sent', result: 'accepted by the webhook (204)' },
  ],
  [
    'will never get through',
    { delivered: false, retryable: false, reason: finding('mailRefused', 'mail.example', 554) },
    0,
    { type: 'given-up', result: 'mail.example refuses the message (554)' },
  ],
  ['failed once', failed, 0, { type: 'retry', result: noAnswer, nextTryMs: NOW_MS + 5_000 }],
  ['failed for the third time', failed, 2, { type: 'retry', result: noAnswer, nextTryMs: NOW_MS + 20_000 }],
  [
    'asked to wait longer than the pause',
    { ...failed, retryAfterMs: 90_000 },
    0,
    { type: 'retry', result: noAnswer, nextTryMs: NOW_MS + 90_000 },
  ],
  [
    'asked to wait shorter than the pause',
    { ...failed, retryAfterMs: 1_000 },
    2,
    { type: 'retry', result: noAnswer, nextTryMs: NOW_MS + 20_000 },
  ],
  [
    'asked to wait until nobody wants to know',
    { ...failed, retryAfterMs: SEVEN_DAYS_MS },
    0,
    { type: 'given-up', result: 'mail.example did not answer in time; tried for 7 days, no more tries' },
  ],
];

test.each(rows)('%s', (_, result, attempts, outcome) => {
  expect(decideOutcome(result, { attempts, decidedMs: DECIDED_MS }, NOW_MS, 0)).toEqual(outcome);
});

test.each([
  ['seven days after deciding there is a last try', SEVEN_DAYS_MS, 'retry'],
  ['a millisecond later there is none', SEVEN_DAYS_MS + 1, 'given-up'],
])('%s', (_, ageMs, type) => {
  expect(retryUnlessForgotten({ attempts: 9, decidedMs: DECIDED_MS }, DECIDED_MS + ageMs, 'no answer').type).toBe(type);
});
