// One turn of the watch is one transaction: readings, probes, refusals, alarms and notices, whole or not at all.
import { describe, expect, it } from 'vitest';
import { openStore } from '../../../server/store/open-store.ts';
import type { Commit, Probe } from '../../../server/store/store.ts';
import { because } from '../../../shared/readings/reason.ts';
import { sampleAlarm, sampleNotice } from '../../support/notice-samples.ts';
import { openTestStore, readRange, storedReading } from '../../support/open-test-store.ts';

const T = 1_750_000_020_000;

const probe: Probe = {
  number: 1,
  id: 'p1',
  nodeId: 'n1',
  address: 'canopy-1',
  name: 'n1 canopy-1',
  silenceMs: 600_000,
  outOfService: false,
  discoveredMs: T,
  placement: null,
};
const refusal = {
  ...{ atMs: T, topic: 'a/b', where: '/0', payloadStart: new Uint8Array([1, 2]) },
  reason: because('nodeName', '"a b"', because('nodeNameLetters')),
  sentence: 'why',
};
const change = {
  type: 'alarm-changed',
  change: 'occurred',
  atMs: T,
  from: 'normal',
  alarm: sampleAlarm,
  person: null,
  note: '',
} as const;

/** Everything that a turn may bring. */
const turn: Commit = {
  readings: [storedReading({ timeMs: T }), storedReading({ timeMs: T + 1 })],
  revised: [{ probe: 1, timeMs: T, temperatureFlag: 3, humidityFlag: 1 }],
  discovered: [probe],
  nodeStatus: [{ nodeId: 'n2', status: 'online', atMs: T }],
  refused: [refusal],
  watch: { entries: [], changes: [change], notices: [sampleNotice] },
};

describe('commit', () => {
  it('stores all that a turn brings', async () => {
    const { store } = await openTestStore();
    expect(await store.commit(turn)).toEqual({ stored: [true, true] });
    expect(await readRange(store)).toMatchObject([{ temperatureFlag: 3 }, { temperatureFlag: 1 }]);
    expect(await store.probes.list()).toEqual([probe]);
    expect(await store.probes.nodes()).toMatchObject([
      { id: 'n1', status: 'unknown' },
      { id: 'n2', status: 'online' },
    ]);
    expect(await store.probes.refused()).toMatchObject([{ ...refusal, payloadStart: Buffer.from([1, 2]) }]);
    expect(await store.alarms.get(sampleAlarm.id)).toEqual(sampleAlarm);
    expect(await store.alarms.events(sampleAlarm.id)).toMatchObject([
      { change: 'occurred', toState: 'unacknowledged' },
    ]);
    expect(await store.notices.ofAlarm(sampleAlarm.id)).toMatchObject([{ id: sampleNotice.id, state: 'waiting' }]);
  });

  it.each([
    ['a reading', 'readings'],
    ['the roll-up', 'minutes'],
    ['a probe', 'probes'],
    ['a refusal', 'refused'],
    ['an alarm', 'alarms'],
    ['a step of an alarm', 'alarm_events'],
    ['a notice', 'notices'],
  ])('stores nothing of a turn when %s cannot be written, and all of it later', async (_why, table) => {
    const { store, db } = await openTestStore();
    const everything = ['readings', 'minutes', 'nodes', 'probes', 'refused', 'alarms', 'alarm_events', 'notices'];
    const count = () => everything.map((name) => db.prepare(`SELECT count(*) FROM ${name}`).pluck().get());
    db.exec(
      `CREATE TRIGGER break_off BEFORE INSERT ON ${table} BEGIN SELECT raise(ABORT, 'the test breaks it off'); END`,
    );
    await expect(store.commit(turn)).rejects.toMatchObject({ code: 'conflict' });
    expect(count()).toEqual(everything.map(() => 0));
    db.exec('DROP TRIGGER break_off');
    await store.commit(turn);
    expect(count()).toEqual([2, 1, 2, 1, 1, 1, 1, 1]);
  });

  it('says that the disk is full, and stores nothing of the turn', async () => {
    const { store, db } = await openTestStore();
    const pages = Number(db.pragma('page_count', { simple: true }));
    await store.close();
    const small = openStore({ file: db.name, nowMs: 0, maxPages: pages + 2 });
    const readings = Array.from({ length: 5_000 }, (_, n) => storedReading({ timeMs: T + n }));
    await expect(small.commit({ readings })).rejects.toMatchObject({ code: 'store-full' });
    expect(await small.readings.countAll()).toBe(0);
    await small.commit({ readings: readings.slice(0, 10) });
    expect(await small.readings.countAll()).toBe(10);
    await small.close();
  });

  it('writes a notice once, however often it is decided, and never takes back what became of it', async () => {
    const { store } = await openTestStore();
    await store.commit(turn);
    const outcome = { noticeId: sampleNotice.id, state: 'sent', result: 'taken', atMs: T, nextTryMs: T } as const;
    await store.commit({ outcomes: [outcome] });
    await store.commit(turn);
    expect(await store.notices.ofAlarm(sampleAlarm.id)).toMatchObject([{ state: 'sent', attempts: 1 }]);
  });

  it('writes what became of a notice although its person was removed meanwhile, without the link they could have used', async () => {
    const { store } = await openTestStore();
    await store.commit(turn);
    const outcome = { noticeId: sampleNotice.id, state: 'sent', result: 'taken', atMs: T, nextTryMs: T } as const;
    const link = { tokenHash: 'hash', alarmId: sampleAlarm.id, saidBy: 'Somebody', madeMs: T, expiresMs: T + 1 };
    await store.commit({ outcomes: [outcome], links: [{ ...link, personId: 'removed' }] });
    expect(await store.notices.ofAlarm(sampleAlarm.id)).toMatchObject([{ state: 'sent' }]);
    expect(await store.acknowledgeLinks.get('hash')).toBeNull();
    await store.commit({ links: [{ ...link, personId: null }] });
    expect(await store.acknowledgeLinks.get('hash')).toMatchObject({ saidBy: 'Somebody', usedMs: null });
  });

  it('keeps the last 200 refusals, newest first, and goes on counting', async () => {
    const { store } = await openTestStore();
    const refused = Array.from({ length: 150 }, () => refusal);
    await store.commit({ refused });
    await store.commit({ refused });
    const ids = (await store.probes.refused()).map(({ id }) => id);
    expect(ids).toEqual(Array.from({ length: 200 }, (_, n) => 300 - n));
  });

  it('keeps the newest status of a node, and when it was told', async () => {
    const { store } = await openTestStore();
    const told = (status: 'online' | 'offline', atMs: number) => ({ nodeId: 'n1', status, atMs });
    await store.commit({ nodeStatus: [told('online', T), told('offline', T + 5)] });
    expect(await store.probes.nodes()).toMatchObject([
      { id: 'n1', status: 'offline', statusMs: T + 5, discoveredMs: T },
    ]);
  });
});
