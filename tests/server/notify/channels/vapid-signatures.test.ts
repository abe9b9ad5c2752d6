// What a push service is shown again, and what makes it a new one. ECDSA signs with chance, so that two signatures are never the same text.
import { expect, test } from 'vitest';
import webPush from 'web-push';
import { createVapidSignatures } from '../../../../server/notify/channels/vapid-signatures.ts';
import { HOUR_MS, MINUTE_MS } from '../../../../shared/units.ts';
import { readVapid } from '../../../support/read-vapid.ts';
import { createTestClock } from '../../../support/test-clock.ts';

const pair = webPush.generateVAPIDKeys();
const subject = 'mailto:takewell@nursery.example';
const phone = new URL('https://push.example/one');

function open() {
  const clock = createTestClock(Date.UTC(2026, 2, 2, 7));
  const signatures = createVapidSignatures(() => clock.nowMs());
  return { clock, signatures, first: signatures.headerFor(phone, pair, subject) };
}

test('the phones of one push service are shown the same signature for an hour, and it is a good one', () => {
  const { clock, signatures, first } = open();
  clock.advance(59 * MINUTE_MS);
  expect(signatures.headerFor(new URL('https://push.example/two'), pair, subject)).toBe(first);
  expect(readVapid(first, 'https://push.example')).toMatchObject({ sub: subject, key: pair.publicKey });
});

test.each<[string, (opened: ReturnType<typeof open>) => string]>([
  [
    'after an hour, long before it runs out',
    ({ clock, signatures }) => {
      clock.advance(HOUR_MS);
      return signatures.headerFor(phone, pair, subject);
    },
  ],
  [
    'when the clock has been set back: it was made by a wrong one',
    ({ clock, signatures }) => {
      clock.advance(-1);
      return signatures.headerFor(phone, pair, subject);
    },
  ],
  [
    'for another push service: a signature names the one it is for',
    ({ signatures }) => signatures.headerFor(new URL('https://push.example:8443/one'), pair, subject),
  ],
  [
    'for a phone that subscribed with another key',
    ({ signatures }) => signatures.headerFor(phone, webPush.generateVAPIDKeys(), subject),
  ],
  ['when the contact changes', ({ signatures }) => signatures.headerFor(phone, pair, 'mailto:other@nursery.example')],
  [
    'after one was refused',
    ({ signatures }) => {
      signatures.forget();
      return signatures.headerFor(phone, pair, subject);
    },
  ],
])('a new one is made %s', (_, next) => {
  const opened = open();
  expect(next(opened)).not.toBe(opened.first);
});
