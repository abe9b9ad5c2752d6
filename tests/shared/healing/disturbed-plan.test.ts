// Whatever people do to a batch in the week in which the clock is moved, its stages follow each other without gap, overlap or step back.
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { expect, it } from 'vitest';
import { type BatchTimes, planStages } from '../../../shared/healing/batch-clock.ts';
import { plannedChecks } from '../../../shared/healing/checks.ts';
import { instantOfShare } from '../../../shared/healing/stage-pace.ts';
import { standardProfiles } from '../../../shared/healing/standard-profiles.ts';
import { DAY_MS, HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';
import { morningProfile } from './sample-plan.ts';

/** Each with the instant at which its clock is moved. */
const weeks = [
  { zone: 'Europe/Amsterdam', shiftMs: Date.parse('2026-03-29T01:00:00Z') },
  { zone: 'Europe/Amsterdam', shiftMs: Date.parse('2026-10-25T01:00:00Z') },
  { zone: 'America/New_York', shiftMs: Date.parse('2026-11-01T06:00:00Z') },
  { zone: 'America/New_York', shiftMs: Date.parse('2026-03-08T07:00:00Z') },
  { zone: 'Australia/Lord_Howe', shiftMs: Date.parse('2026-04-04T15:00:00Z') },
  { zone: 'Australia/Lord_Howe', shiftMs: Date.parse('2026-10-03T15:30:00Z') },
  { zone: 'Asia/Kathmandu', shiftMs: Date.parse('2026-03-29T01:00:00Z') },
] as const;
const order = ['loading', 'closed', 'venting', 'hardening'] as const;

const minutes = (max: number) => fc.integer({ min: 0, max }).map((count) => count * MINUTE_MS);
const sincePlan = minutes(12 * 24 * 60);
const hold = fc.record({ atMs: sincePlan, forMs: fc.option(minutes(40 * 60), { nil: null }) });
const move = fc.record({ stage: fc.constantFrom('venting' as const, 'hardening' as const), atMs: sincePlan });
const happened = fc.record({
  week: fc.constantFrom(...weeks),
  closedBeforeMs: minutes(8 * 24 * 60),
  loadingMs: minutes(20 * 60),
  holds: fc.array(hold, { maxLength: 3 }),
  moves: fc.array(move, { maxLength: 3 }),
  finishedMs: fc.option(sincePlan, { nil: null }),
  asOfMs: sincePlan,
  document: fc.constantFrom(morningProfile(), ...standardProfiles.map(({ document }) => document)),
});

function timesOf({ week, closedBeforeMs, loadingMs, holds, moves, finishedMs }: Happened): BatchTimes {
  const closedMs = week.shiftMs - closedBeforeMs;
  return {
    ...{ openedMs: closedMs - loadingMs, closedMs, zone: week.zone },
    finishedMs: finishedMs === null ? null : closedMs + finishedMs,
    holds: holds.map(({ atMs, forMs }) => ({
      fromMs: closedMs + atMs,
      toMs: forMs === null ? null : closedMs + atMs + forMs,
    })),
    moves: moves.map(({ stage, atMs }) => ({ stage, atMs: closedMs + atMs })),
  };
}
type Happened = typeof happened extends fc.Arbitrary<infer T> ? T : never;

it('stages border each other, run in order and have a length, whatever was held, moved or finished', () => {
  fc.assert(
    fc.property(happened, (what) => {
      const times = timesOf(what);
      const spans = planStages(what.document, times, (times.closedMs ?? 0) + what.asOfMs);
      for (const [index, span] of spans.entries()) {
        expect(span.endMs).toBeGreaterThan(span.startMs);
        const next = spans[index + 1];
        if (next === undefined) continue;
        expect(next.startMs).toBe(span.endMs);
        expect(order.indexOf(next.stage)).toBeGreaterThan(order.indexOf(span.stage));
      }
    }),
    { numRuns: 400 },
  );
});

it('every check falls into its batch and its stage, in order of time, none twice', () => {
  fc.assert(
    fc.property(happened, (what) => {
      const times = timesOf(what);
      const asOfMs = (times.closedMs ?? 0) + what.asOfMs;
      const spans = planStages(what.document, times, asOfMs);
      const checks = plannedChecks(what.document, times, asOfMs);
      expect(new Set(checks.map(({ checkId }) => checkId)).size).toBe(checks.length);
      expect(checks.map(({ dueMs }) => dueMs)).toEqual(checks.map(({ dueMs }) => dueMs).toSorted((a, b) => a - b));
      for (const { dueMs, stage } of checks)
        expect(
          spans.some((one) => one.stage === stage && one.startMs <= dueMs && dueMs < (one.endMs ?? Infinity)),
        ).toBe(true);
    }),
    { numRuns: 200 },
  );
});

it('undisturbed, venting begins at 07:00 on the morning of the fifth day, also where that day is after the shift', () => {
  fc.assert(
    fc.property(fc.constantFrom(...weeks), minutes(8 * 24 * 60), ({ zone, shiftMs }, beforeMs) => {
      const closedMs = shiftMs - beforeMs;
      const times = { openedMs: null, closedMs, finishedMs: null, zone, holds: [], moves: [] };
      const venting = planStages(morningProfile(), times, closedMs).find(({ stage }) => stage === 'venting');
      const startMs = venting?.startMs ?? 0;
      const local = Temporal.Instant.fromEpochMilliseconds(startMs).toZonedDateTimeISO(zone).toPlainTime().toString();
      expect(local).toBe('07:00:00');
      expect(startMs - closedMs).toBeGreaterThanOrEqual(4 * DAY_MS);
      expect(startMs - closedMs).toBeLessThan(5 * DAY_MS + HOUR_MS);
    }),
    { numRuns: 300 },
  );
});

it('who knows of something only later plans the same as who knew from the start', () => {
  fc.assert(
    fc.property(happened, (what) => {
      const times = timesOf(what);
      // Open holds last until now; all else is known, so that the instant of asking must not matter.
      const known = { ...times, holds: times.holds.filter(({ toMs }) => toMs !== null) };
      const [early, late] = [0, 30 * DAY_MS].map((ms) => planStages(what.document, known, (times.closedMs ?? 0) + ms));
      expect(early).toEqual(late);
      expect(planStages(what.document, { ...known, holds: known.holds.toReversed(), moves: known.moves }, 0)).toEqual(
        late,
      );
    }),
    { numRuns: 200 },
  );
});

it('a step that is reached as a hold begins is taken then, not when the hold ends', () => {
  const pace = [
    { atMs: 0, share: 0 },
    { atMs: 10, share: 0.5 },
    { atMs: 30, share: 0.5 },
    { atMs: 40, share: 1 },
  ];
  expect([0.5, 0.51, 1].map((share) => instantOfShare(pace, share))).toEqual([10, 30.2, 40]);
});
