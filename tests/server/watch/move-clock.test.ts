// What is remembered of a clock that was set back, and which readings it explains.
import { expect, it } from 'vitest';
import { isDatedAhead, MOST_AHEAD_MS, setBackAt } from '../../../server/watch/move-clock.ts';
import type { ProbeState } from '../../../server/watch/probe-book.ts';
import { HOUR_MS } from '../../../shared/units.ts';
import { storedReading } from '../../support/open-test-store.ts';

const NOW_MS = Date.UTC(2026, 2, 1, 10);
const setBack = { atMs: NOW_MS, aheadToMs: NOW_MS + 2 * HOUR_MS };

function probeHeard(heardMs: number | null, storedToMs: number): ProbeState {
  const probe = { ...{ number: 1, id: 'p1', nodeId: 'n1', address: 'a', name: 'One' }, silenceMs: 1 };
  const newest = heardMs === null ? null : storedReading({ timeMs: heardMs });
  return {
    ...{ newest, storedToMs, calibrations: [], quality: null, watchedSinceMs: 0, countsFromMs: 0 },
    probe: { ...probe, outOfService: false, discoveredMs: 0, placement: null },
  };
}

it.each([
  ['what was heard last', null, [probeHeard(NOW_MS + 7, 0), probeHeard(NOW_MS + 9, 0)], NOW_MS + 9],
  ['what is stored beyond that', null, [probeHeard(NOW_MS - 1, NOW_MS + 5)], NOW_MS + 5],
  ['what was ahead already when it was set back before', setBack, [probeHeard(NOW_MS, 0)], setBack.aheadToMs],
  ['nothing, without a reading', null, [probeHeard(null, 0)], NOW_MS],
])('reaches to %s', (_what, before, probes, aheadToMs) => {
  expect(setBackAt(NOW_MS, before, probes)).toEqual({ atMs: NOW_MS, aheadToMs });
});

it.each([
  ['one that may be heard now is not ahead', NOW_MS + MOST_AHEAD_MS, setBack, false],
  ['a millisecond more is', NOW_MS + MOST_AHEAD_MS + 1, setBack, true],
  ['the last that the clock before has dated is', setBack.aheadToMs, setBack, true],
  ['one beyond it is not explained by that', setBack.aheadToMs + 1, setBack, false],
  ['without a clock that was set back none is explained', NOW_MS + HOUR_MS, null, false],
])('%s', (_why, timeMs, known, expected) => {
  expect(isDatedAhead(timeMs, known, NOW_MS)).toBe(expected);
});
