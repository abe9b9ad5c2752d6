// The heartbeat against a real receiver: one a minute, with nothing in it, to nowhere local unless allowed, and its failure is told.
import { expect, it, onTestFinished } from 'vitest';
import { createHeartbeat } from '../../../server/notify/heartbeat.ts';
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
  const heartbeat = createHeartbeat({ target, steadyMs: () => clock.ms });
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
  await expect.poll(() => heartbeat.trouble()).toBe('it answers 500');
});

it('is not sent to an address on this machine unless that is allowed', async () => {
  const { asked, heartbeat } = await openPulse({ allowLocal: false });
  heartbeat.beat();
  await expect.poll(() => heartbeat.trouble()).toMatch(/names this machine/);
  expect(asked).toEqual([]);
});

it('is nothing while none is set', () => {
  const heartbeat = createHeartbeat({ target: () => null, steadyMs: () => 0 });
  heartbeat.beat();
  expect(heartbeat.trouble()).toBeNull();
});
