// How often the fit of a batch is made: it costs more than an answer may.
import { describe, expect, it } from 'vitest';
import type { Store } from '../../../server/store/store.ts';
import { createExchangeBook } from '../../../server/venting/exchange-book.ts';
import type { Batch } from '../../../shared/healing/batch.ts';
import { HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';
import { openTestStore } from '../../support/open-test-store.ts';

const batch: Batch = {
  ...{ id: 'b', code: 'B', chamberId: 'c', profileId: 'p', profileVersion: 1, scion: '', rootstock: '', method: '' },
  ...{ trays: 1, plants: 1, openedMs: 0, closedMs: 0, finishedMs: null, takenPlants: null, holds: [], moves: [] },
};
const log = [{ atMs: HOUR_MS, kind: 'gap', gapPercent: 10 }];
const NOW_MS = 3 * HOUR_MS;

/** A book that counts how often it asks the store for probes: once a fit. */
async function openCountedBook() {
  const { store } = await openTestStore();
  let fits = 0;
  const list: Store['probes']['list'] = () => {
    fits += 1;
    return store.probes.list();
  };
  return { book: createExchangeBook({ ...store, probes: { ...store.probes, list } }), fits: () => fits };
}

describe('the fit of a batch', () => {
  it.each([
    { why: 'asked again just before ten minutes', afterMs: 10 * MINUTE_MS - 1, log, altitudeM: 0, fits: 1 },
    { why: 'asked again after ten minutes', afterMs: 10 * MINUTE_MS, log, altitudeM: 0, fits: 2 },
    {
      why: 'the gap was changed',
      afterMs: 1,
      log: [...log, { atMs: 2 * HOUR_MS, kind: 'gap', gapPercent: 20 }],
      altitudeM: 0,
      fits: 2,
    },
    {
      why: 'something else was logged',
      afterMs: 1,
      log: [...log, { atMs: 2 * HOUR_MS, kind: 'erect', gapPercent: null }],
      altitudeM: 0,
      fits: 1,
    },
    { why: 'the altitude was set', afterMs: 1, log, altitudeM: 900, fits: 2 },
  ])('is made $fits time(s) when $why', async ({ afterMs, log: logNow, altitudeM, fits }) => {
    const counted = await openCountedBook();
    await counted.book.fitOf(batch, log, { altitudeM: 0, nowMs: NOW_MS });
    await counted.book.fitOf(batch, logNow, { altitudeM, nowMs: NOW_MS + afterMs });
    expect(counted.fits()).toBe(fits);
  });

  it('is made once for all who ask at the same time', async () => {
    const counted = await openCountedBook();
    await Promise.all([1, 2, 3].map(() => counted.book.fitOf(batch, log, { altitudeM: 0, nowMs: NOW_MS })));
    expect(counted.fits()).toBe(1);
  });

  it('is tried again after the store could not be read', async () => {
    const { store } = await openTestStore();
    let isBroken = true;
    const list: Store['probes']['list'] = () => (isBroken ? Promise.reject(new Error('not now')) : store.probes.list());
    const book = createExchangeBook({ ...store, probes: { ...store.probes, list } });
    await expect(book.fitOf(batch, log, { altitudeM: 0, nowMs: NOW_MS })).rejects.toThrow('not now');
    isBroken = false;
    const { result } = await book.fitOf(batch, log, { altitudeM: 0, nowMs: NOW_MS });
    expect(result).toMatchObject({ fit: null, why: 'too-few-readings' });
  });
});
