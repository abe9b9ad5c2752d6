// What became of notices is written together where it is known together, and kept until it can be.
import { expect, test } from 'vitest';
import { createRecorder, type Tried } from '../../../server/notify/record-outcome.ts';
import type { Store } from '../../../server/store/store.ts';
import { finding } from '../../../shared/finding.ts';
import { SAMPLE_MS, sampleAlarm } from '../../support/notice-samples.ts';
import { openAlertSite, phoneOne, phoneTwo, stateOf } from '../../support/open-alert-site.ts';

const triedBy = (targetId: string): Tried => ({
  outcome: { type: 'sent', result: `taken by ${targetId}` },
  targetResults: [{ targetId, delivered: true, finding: finding('asWritten', 'taken'), atMs: SAMPLE_MS }],
});

const log = { info: () => undefined, warn: () => undefined, error: () => undefined };
const clock = { nowMs: () => SAMPLE_MS };

/** A recorder on a store that counts its transactions and can be full. */
async function openRecorder() {
  const site = await openAlertSite();
  const disk = { isFull: false, commits: 0 };
  const store: Store = {
    ...site.store,
    commit(work) {
      disk.commits += 1;
      return disk.isFull ? Promise.reject(new Error('disk full')) : site.store.commit(work);
    },
  };
  await site.tell({}, 'raised', [phoneOne, phoneTwo], SAMPLE_MS);
  const [one, two] = await site.store.notices.ofAlarm(sampleAlarm.id);
  if (one === undefined || two === undefined) throw new Error('the site has not told two phones');
  return { store, disk, one, two, recorder: createRecorder({ store, clock, log }) };
}

const bothSent = [
  { kind: 'raised', state: 'sent', result: 'taken by phone-1' },
  { kind: 'raised', state: 'sent', result: 'taken by phone-2' },
];

test('two that are answered at the same moment are one transaction', async () => {
  const { store, disk, one, two, recorder } = await openRecorder();
  await Promise.all([recorder.record([one], triedBy('phone-1')), recorder.record([two], triedBy('phone-2'))]);
  expect(disk.commits).toBe(1);
  expect(await stateOf(store)).toEqual(bothSent);
  expect((await store.targetResults.all()).map(({ targetId }) => targetId)).toEqual(['phone-1', 'phone-2']);
});

test('one that cannot be written is held, and written with the next', async () => {
  const { store, disk, one, two, recorder } = await openRecorder();
  disk.isFull = true;
  await recorder.record([one], triedBy('phone-1'));
  expect([recorder.holds(one.id), recorder.heldCount()]).toEqual([true, 1]);
  disk.isFull = false;
  await recorder.record([two], triedBy('phone-2'));
  expect([recorder.holds(one.id), recorder.heldCount(), disk.commits]).toEqual([false, 0, 2]);
  expect(await stateOf(store)).toEqual(bothSent);
});
