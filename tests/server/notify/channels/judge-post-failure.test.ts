import { expect, test } from 'vitest';
import { judgePostFailure } from '../../../../server/notify/channels/judge-post-failure.ts';
import { readRetryAfter } from '../../../../server/notify/channels/read-retry-after.ts';
import { sayFinding } from '../../../../shared/finding.ts';
import { plainEnglish } from '../../../../shared/plain-english.ts';

const withCode = (code: string) => Object.assign(new Error('raw'), { code });
const aborted = Object.assign(new Error('raw'), { name: 'AbortError', code: 'ABORT_ERR' });

test.each([
  [withCode('ENOTFOUND'), 'the name of hook.example is not found: check the address and the way to the internet'],
  [withCode('EAI_AGAIN'), 'the name of hook.example cannot be looked up now: check the way to the internet'],
  [withCode('ECONNREFUSED'), 'hook.example refuses the connection: is it running?'],
  [withCode('ECONNRESET'), 'hook.example broke the connection off'],
  [withCode('EHOSTUNREACH'), 'hook.example cannot be reached: check the network'],
  [
    withCode('DEPTH_ZERO_SELF_SIGNED_CERT'),
    'the certificate of hook.example cannot be trusted (DEPTH_ZERO_SELF_SIGNED_CERT)',
  ],
  [withCode('CERT_HAS_EXPIRED'), 'the certificate of hook.example cannot be trusted (CERT_HAS_EXPIRED)'],
  [aborted, 'hook.example did not answer within 10 s'],
  [withCode('EWHATEVER'), 'sending to hook.example failed (EWHATEVER)'],
  [new TypeError('raw'), 'sending to hook.example failed (TypeError)'],
  ['a text', 'sending to hook.example failed (unknown)'],
])('a failure in plain words, without the raw message: %s', (error, words) => {
  expect(sayFinding(judgePostFailure(error, 'hook.example', 10_000), plainEnglish.words)).toBe(words);
});

const date = 'Sun, 01 Mar 2026 12:00:00 GMT';

test.each([
  ['seconds', { 'retry-after': '120' }, 120_000],
  ['no wait at all', { 'retry-after': '0' }, 0],
  ['a date, measured by the date of the answer', { 'retry-after': 'Sun, 01 Mar 2026 12:02:00 GMT', date }, 120_000],
  ['a date in the past', { 'retry-after': 'Sun, 01 Mar 2026 11:00:00 GMT', date }, undefined],
  ['a date without a date of the answer', { 'retry-after': date }, undefined],
  ['nonsense', { 'retry-after': 'soon', date }, undefined],
  ['nothing', {}, undefined],
])('Retry-After: %s', (_, headers, ms) => {
  expect(readRetryAfter(headers)).toBe(ms);
});
