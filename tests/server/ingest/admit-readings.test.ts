// Admission on a real store: what it makes of a group of messages, and that a group which could not be stored has left no trace in memory.
import { describe, expect, it } from 'vitest';
import { type AdmitParts, admitReadings } from '../../../server/ingest/admit-readings.ts';
import type { ArrivedMessage } from '../../../server/ingest/arrived-message.ts';
import { openSite } from '../../../server/site.ts';
import type { Store } from '../../../server/store/store.ts';
import { openProbeBook } from '../../../server/watch/probe-book.ts';
import { silentTelling } from '../../../server/watch/teller.ts';
import { openWatch } from '../../../server/watch/watch.ts';
import { Problem } from '../../../shared/problem.ts';
import { FLAG } from '../../../shared/readings/reading.ts';
import { MINUTE_MS, SECOND_MS, utcText } from '../../../shared/units.ts';
import { openTestStore, readRange } from '../../support/open-test-store.ts';
import { createTestClock } from '../../support/test-clock.ts';

const NOW_MS = Date.parse('2026-03-02T07:00:00Z');

async function openAdmission(change: (store: Store) => Store = (store) => store) {
  const { store } = await openTestStore();
  const clock = createTestClock(NOW_MS);
  const site = await openSite(store);
  const probes = await openProbeBook(store, NOW_MS);
  const watch = await openWatch({ store, site, probes, telling: silentTelling });
  const parts: AdmitParts = { store: change(store), watch, site, clock };
  return { store, probes, clock, admit: (...messages: ArrivedMessage[]) => admitReadings(messages, parts) };
}

/** Readings of node n1 that arrive now, dated by seconds before now. */
function pack(
  ...readings: readonly (readonly [secondsAgo: number, temperature: number, probe?: string])[]
): ArrivedMessage {
  const list = readings.map(([secondsAgo, temperature, probe = '']) => ({
    ...{ temperature, humidity: 95, probe },
    time: utcText(NOW_MS - secondsAgo * SECOND_MS),
  }));
  return message('takewell/v1/n1/readings', JSON.stringify(list));
}

function message(topic: string, text: string): ArrivedMessage {
  return { topic, payload: Buffer.from(text), arrivalMs: NOW_MS, retained: false };
}

describe('admitReadings', () => {
  it('discovers each probe once, whatever the order and number of its messages', async () => {
    const { store, admit } = await openAdmission();
    await admit(pack([10, 21, 'a'], [9, 21, 'b']), pack([8, 21, 'a']), pack([7, 21, 'b'], [6, 21, 'c']));
    await admit(pack([5, 21, 'c'], [4, 21, 'd']));
    const probes = (await store.probes.list()).map(({ number, nodeId, address }) => `${number} ${nodeId} ${address}`);
    expect(probes).toEqual(['1 n1 a', '2 n1 b', '3 n1 c', '4 n1 d']);
    expect(await readRange(store, 3)).toHaveLength(2);
  });

  it('judges a pack in order of time, however it is sorted', async () => {
    const spiky = [
      [60, 21],
      [50, 21],
      [40, 30],
      [30, 21],
      [20, 21],
    ] as const;
    const flagsOf = async (order: readonly (readonly [number, number])[]) => {
      const { store, admit } = await openAdmission();
      await admit(pack(...order));
      return (await readRange(store)).map(({ temperatureFlag }) => temperatureFlag);
    };
    const sorted = await flagsOf(spiky);
    expect(sorted[2]).toBe(FLAG.fail);
    expect(await flagsOf([...spiky].reverse())).toEqual(sorted);
  });

  it('corrects the flag of a reading that is stored already when the next one shows it to be a spike', async () => {
    const { store, admit } = await openAdmission();
    await admit(pack([60, 21]), pack([50, 21]), pack([40, 25.5]));
    expect((await readRange(store))[2]?.temperatureFlag).not.toBe(FLAG.fail);
    await admit(pack([30, 16]));
    expect((await readRange(store))[2]?.temperatureFlag).toBe(FLAG.suspect);
  });

  it('marks by the arrival of the message, not by the moment of storing', async () => {
    const { store, admit, clock } = await openAdmission();
    clock.advance(60 * MINUTE_MS);
    await admit(pack([0, 21], [120, 21], [121, 21]));
    expect((await readRange(store)).map(({ late }) => late)).toEqual([true, false, false]);
  });

  it('stores readings, refusals and the status of a node from one group', async () => {
    const { store, admit } = await openAdmission();
    await admit(
      pack([10, 21]),
      message('takewell/v1/n1/status', 'online'),
      message('takewell/v1/n1/readings', 'nonsense'),
      message('elsewhere', '1'),
      message('takewell/v1/n1/status', 'offline'),
    );
    expect(await readRange(store)).toHaveLength(1);
    expect(await store.probes.nodes()).toMatchObject([{ id: 'n1', status: 'offline' }]);
    expect((await store.probes.refused()).map(({ topic }) => topic)).toEqual(['elsewhere', 'takewell/v1/n1/readings']);
  });

  it('tells which probes were heard', async () => {
    const { admit } = await openAdmission();
    const told = await admit(pack([10, 21, 'a']), pack([9, 21, 'b']));
    expect(told).toEqual({
      ...{ chamberIds: [], probeIds: ['p1', 'p2'], alarms: [], noticesWritten: false },
      ...{ readings: 2, refused: 0, hasLate: false },
    });
  });
});

describe('a group that could not be stored', () => {
  it('leaves no probe, no reading and no judgement behind: tried again, it is as if it came first', async () => {
    let failures = 1;
    const failing = (store: Store): Store => ({
      ...store,
      commit: (work) =>
        failures-- > 0
          ? Promise.reject(new Problem('store-full', ({ problems }) => problems.diskFull))
          : store.commit(work),
    });
    const steady = await openAdmission();
    const shaken = await openAdmission(failing);
    const group = [pack([60, 21, 'a']), pack([50, 30, 'a']), pack([40, 21, 'a'])] as const;
    await expect(shaken.admit(...group)).rejects.toMatchObject({ code: 'store-full' });
    expect([...shaken.probes.all()]).toEqual([]);
    await shaken.admit(...group);
    await steady.admit(...group);
    expect(await readRange(shaken.store)).toEqual(await readRange(steady.store));
    expect([...shaken.probes.all()]).toEqual([...steady.probes.all()]);
  });
});
