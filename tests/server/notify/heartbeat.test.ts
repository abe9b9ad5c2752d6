// The heartbeat against a real receiver: one a minute, with nothing in it, to nowhere local unless allowed, and its failure is told.
import { expect, it, onTestFinished } from 'vitest';
import { systemClock } from '../../../server/clock.ts';
import { createHeartbeat } from '../../../server/notify/heartbeat.ts';
import { finding } from '../../../shared/finding.ts';
import { MINUTE_MS } from '../../../shared/units.ts';
import { openHttpPeer, type PeerAnswer } from '../../support/http-peer.ts';

async function openPulse({ allowLocal = true, answer = { status: 200 } as PeerAnswer } = {}) {
  const asked: { path: string; bytes: number }[] = [];
  const peer = await openHttpPeer(({ path, body }) => {
    asked.push({ path, bytes: body.length });
    return answer;
  });
  onTestFinished(peer.close);
  const clock = { ms: 0 };
  const target = () => ({ url: `${peer.origin}/alive`, allowLocal });
  const heartbeat = createHeartbeat({ target, clock: { nowMs: () => clock.ms, steadyMs: () => clock.ms } });
  onTestFinished(heartbeat.close);
  return { asked, clock, heartbeat };
}

it('beats once a minute and says nothing but that it is alive', async () => {
  const { asked, clock, heartbeat } = await openPulse();
  heartbeat.beat();
  clock.ms = MINUTE_MS - 1;
  heartbeat.beat();
  await expect.poll(() => asked).toEqual([{ path: '/alive', bytes: 0 }]);
  clock.ms = MINUTE_MS;
  heartbeat.beat();
  await expect.poll(() => asked.length).toBe(2);
  expect(heartbeat.trouble()).toBeNull();
});

it('says what the other side answers when it is not well', async () => {
  const { heartbeat } = await openPulse({ answer: { status: 500 } });
  heartbeat.beat();
  await expect.poll(() => heartbeat.trouble()).toEqual(finding('answers', 500));
});

it('is not sent to an address on this machine unless that is allowed', async () => {
  const { asked, heartbeat } = await openPulse({ allowLocal: false });
  heartbeat.beat();
  await expect.poll(() => heartbeat.trouble()).toEqual(finding('localAddress', '127.0.0.1'));
  expect(asked).toEqual([]);
});

it('is nothing while none is set', () => {
  const heartbeat = createHeartbeat({ target: () => null, clock: systemClock });
  heartbeat.beat();
  expect(heartbeat.trouble()).toBeNull();
});

it('is sent at once when it is tried, and the next one a minute later', async () => {
  const { asked, clock, heartbeat } = await openPulse();
  expect(await heartbeat.test()).toEqual({ delivered: true, answer: 200, atMs: 0 });
  clock.ms = MINUTE_MS - 1;
  heartbeat.beat();
  clock.ms = MINUTE_MS;
  heartbeat.beat();
  await expect.poll(() => asked.length).toBe(2);
});

const answers: [string, PeerAnswer, number][] = [
  ['a redirect is not followed', { status: 302, headers: { location: 'http://elsewhere.example/' } }, 302],
  ['an error is no answer that counts', { status: 500 }, 500],
];

it.each(answers)('tried: %s', async (_why, answer, status) => {
  const { heartbeat } = await openPulse({ answer });
  expect(await heartbeat.test()).toMatchObject({ delivered: false, answer: status });
  expect(heartbeat.trouble()).toEqual(finding('answers', status));
});

it('tried: an address on this machine is not asked unless that is allowed', async () => {
  const { asked, heartbeat } = await openPulse({ allowLocal: false });
  expect(await heartbeat.test()).toMatchObject({
    delivered: false,
    answer: finding('localAddress', '127.0.0.1'),
  });
  expect(asked).toEqual([]);
});

it('tried: says that none is set', async () => {
  expect(await createHeartbeat({ target: () => null, clock: systemClock }).test()).toBeNull();
});
