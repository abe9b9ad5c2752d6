// Where the stages begin and end: by the plan, with holds, with moves, at the finish.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BatchTimes, planStages, type StageSpan, stageAt } from '../../../shared/healing/batch-clock.ts';
import { HOUR_MS } from '../../../shared/units.ts';
import { closedMs, morningProfile, plainProfile, plainStage, timesOf } from './sample-plan.ts';

const at = (hours: number) => closedMs + hours * HOUR_MS;
const hoursOf = (ms: number | null) => (ms === null ? null : (ms - closedMs) / HOUR_MS);

/** `[stage, start, end]` in hours after closing. */
function rows(spans: readonly StageSpan[]) {
  return spans.map(({ stage, startMs, endMs }) => [stage, hoursOf(startMs), hoursOf(endMs)]);
}

const plain = (times: Partial<BatchTimes>, asOf = 500) => rows(planStages(plainProfile(), timesOf(times), at(asOf)));
const morning = (times: Partial<BatchTimes>, asOf = 500) =>
  rows(planStages(morningProfile(), timesOf(times), at(asOf)));

describe('the undisturbed plan', () => {
  it('runs from closing through the hours of the profile', () => {
    expect(plain({})).toEqual([
      ['closed', 0, 96],
      ['venting', 96, 144],
      ['hardening', 144, 192],
    ]);
  });

  it('has loading from opening to closing when the opening is known', () => {
    expect(plain({ openedMs: at(-6) })[0]).toEqual(['loading', -6, 0]);
  });

  it('is only an open loading while the chamber is not closed', () => {
    expect(plain({ openedMs: at(-6), closedMs: null })).toEqual([['loading', -6, null]]);
  });

  it('is nothing when neither opening nor closing is known', () => {
    expect(plain({ closedMs: null })).toEqual([]);
  });

  it('has no loading when the batch was opened as it was closed', () => {
    expect(plain({ openedMs: at(0) })[0]?.[0]).toBe('closed');
  });

  it('waits for the morning: closed at 15:00, so that 96 h are over on the fourth afternoon', () => {
    expect(morning({})).toEqual([
      ['closed', 0, 112],
      ['venting', 112, 160],
      ['hardening', 160, 208],
    ]);
  });

  it('does not wait when the clock gets there exactly in the morning', () => {
    const times = timesOf({ closedMs: Date.parse('2026-03-02T07:00:00Z') });
    expect(planStages(morningProfile(), times, at(0))[1]?.startMs).toBe(Date.parse('2026-03-06T07:00:00Z'));
  });
});

describe('holds', () => {
  it('shift what follows by their length', () => {
    expect(plain({ holds: [{ fromMs: at(10), toMs: at(15) }] })).toEqual([
      ['closed', 0, 101],
      ['venting', 101, 149],
      ['hardening', 149, 197],
    ]);
  });

  it('shift only what follows: one in venting leaves its beginning alone', () => {
    expect(plain({ holds: [{ fromMs: at(100), toMs: at(110) }] })).toEqual([
      ['closed', 0, 96],
      ['venting', 96, 154],
      ['hardening', 154, 202],
    ]);
  });

  it('may be taken up by the wait for the morning', () => {
    expect(morning({ holds: [{ fromMs: at(10), toMs: at(15) }] })[1]).toEqual(['venting', 112, 160]);
  });

  it('move the beginning to the next morning when they cover it, for nothing begins during a hold', () => {
    expect(morning({ holds: [{ fromMs: at(111), toMs: at(113) }] })[1]).toEqual(['venting', 136, 160]);
  });

  it('still open last until now, and the plan goes on from there', () => {
    expect(plain({ holds: [{ fromMs: at(90), toMs: null }] }, 120)).toEqual([
      ['closed', 0, 126],
      ['venting', 126, 174],
      ['hardening', 174, 222],
    ]);
  });
});

describe('moves', () => {
  it('begin their stage at once, and what follows keeps its planned distance', () => {
    expect(plain({ moves: [{ stage: 'venting', atMs: at(80) }] })).toEqual([
      ['closed', 0, 80],
      ['venting', 80, 128],
      ['hardening', 128, 176],
    ]);
  });

  it('may come late', () => {
    expect(plain({ moves: [{ stage: 'venting', atMs: at(100) }] })[2]).toEqual(['hardening', 148, 196]);
  });

  it('keep the distance of the plan with its mornings: two days, not the rest of the hours', () => {
    // Undisturbed: venting at 112 h, hardening at 160 h.
    expect(morning({ moves: [{ stage: 'venting', atMs: at(90) }] })).toEqual([
      ['closed', 0, 90],
      ['venting', 90, 138],
      ['hardening', 138, 186],
    ]);
  });

  it('are followed by the holds that come after them, and not by those before', () => {
    const holds = [
      { fromMs: at(10), toMs: at(20) },
      { fromMs: at(90), toMs: at(93) },
    ];
    expect(plain({ holds, moves: [{ stage: 'venting', atMs: at(80) }] })[2]).toEqual(['hardening', 131, 179]);
  });

  it('count a hold after them once, though it lies in the planned distance as well', () => {
    const holds = [{ fromMs: at(100), toMs: at(105) }];
    expect(plain({ holds, moves: [{ stage: 'venting', atMs: at(80) }] })[2]).toEqual(['hardening', 133, 181]);
  });

  it('skip a stage that had not begun', () => {
    expect(plain({ moves: [{ stage: 'hardening', atMs: at(90) }] })).toEqual([
      ['closed', 0, 90],
      ['hardening', 90, 138],
    ]);
  });

  it('end the stage before early, and each move counts from the last', () => {
    const moves = [
      { stage: 'venting' as const, atMs: at(90) },
      { stage: 'hardening' as const, atMs: at(100) },
    ];
    expect(plain({ moves })).toEqual([
      ['closed', 0, 90],
      ['venting', 90, 100],
      ['hardening', 100, 148],
    ]);
  });

  it('back to an earlier stage undo the later ones', () => {
    const moves = [
      { stage: 'hardening' as const, atMs: at(90) },
      { stage: 'venting' as const, atMs: at(100) },
    ];
    expect(plain({ moves })).toEqual([
      ['closed', 0, 100],
      ['venting', 100, 148],
      ['hardening', 148, 196],
    ]);
  });

  it('before closing, to loading or to closed change nothing', () => {
    const moves = [
      { stage: 'venting' as const, atMs: at(-1) },
      { stage: 'closed' as const, atMs: at(10) },
      { stage: 'loading' as const, atMs: at(10) },
    ];
    expect(plain({ moves })).toEqual(plain({}));
  });
});

describe('the finish', () => {
  it('ends the plan where the batch was finished', () => {
    expect(plain({ finishedMs: at(120) })).toEqual([
      ['closed', 0, 96],
      ['venting', 96, 120],
    ]);
  });

  it('ends an open loading too', () => {
    expect(plain({ openedMs: at(-6), closedMs: null, finishedMs: at(-2) })).toEqual([['loading', -6, -2]]);
  });

  it('later than planned does not draw the plan out', () => {
    expect(plain({ finishedMs: at(300) }).at(-1)).toEqual(['hardening', 144, 192]);
  });
});

describe('the stage at an instant', () => {
  const spans = planStages(plainProfile(), timesOf(), closedMs);
  const cases = [
    { why: 'there is none before the first', hours: -0.001, stage: null },
    { why: 'a stage includes its beginning', hours: 96, stage: 'venting' },
    { why: 'a stage does not include its end', hours: 95.999, stage: 'closed' },
    { why: 'there is none from the end of the plan on', hours: 192, stage: null },
  ];
  it.each(cases)('$why', ({ hours, stage }) => {
    expect(stageAt(spans, at(hours))?.stage ?? null).toBe(stage);
  });

  it('is loading for as long as the chamber is open', () => {
    const open = planStages(plainProfile(), timesOf({ openedMs: at(-6), closedMs: null }), at(0));
    expect(stageAt(open, at(1000))?.stage).toBe('loading');
  });
});

describe('the pace of a stage', () => {
  const venting = (times: Partial<BatchTimes>, asOf = 500) =>
    planStages(plainProfile(), timesOf(times), at(asOf)).find(({ stage }) => stage === 'venting');
  const pace = (times: Partial<BatchTimes>, asOf?: number) =>
    venting(times, asOf)?.pace?.map(({ atMs, share }) => [hoursOf(atMs), share]);

  it('is not spelled out when nothing disturbs it', () => {
    expect(venting({})).not.toHaveProperty('pace');
  });

  it('stands still during a hold', () => {
    expect(pace({ holds: [{ fromMs: at(108), toMs: at(118) }] })).toEqual([
      [96, 0],
      [108, 0.25],
      [118, 0.25],
      [154, 1],
    ]);
  });

  it('before a hold is the same whether the hold came or not', () => {
    const morningHold = { holds: [{ fromMs: at(124), toMs: at(134) }] };
    const span = planStages(morningProfile(), timesOf(morningHold), at(500)).find(({ stage }) => stage === 'venting');
    // Undisturbed 112–160 h; the hold drives the beginning of hardening to the next morning.
    expect(span?.pace?.slice(0, 3).map(({ atMs, share }) => [hoursOf(atMs), share])).toEqual([
      [112, 0],
      [124, 0.25],
      [134, 0.25],
    ]);
  });

  it('cut short by a move ends below 1, as it stood when the manager moved on', () => {
    expect(pace({ moves: [{ stage: 'hardening', atMs: at(120) }] })).toEqual([
      [96, 0],
      [120, 0.5],
    ]);
  });

  it('drawn out by a late move stands at 1 from the planned end on', () => {
    expect(pace({ moves: [{ stage: 'hardening', atMs: at(150) }] })).toEqual([
      [96, 0],
      [144, 1],
      [150, 1],
    ]);
  });
});

const anyTimes = fc.record({
  holds: fc.array(
    fc
      .record({ from: fc.integer({ min: -10, max: 250 }), length: fc.integer({ min: 0, max: 30 }) })
      .map(({ from, length }) => ({ fromMs: at(from), toMs: at(from + length) })),
    { maxLength: 4 },
  ),
  moves: fc.array(
    fc.record({
      stage: fc.constantFrom('loading' as const, 'closed' as const, 'venting' as const, 'hardening' as const),
      atMs: fc.integer({ min: -10, max: 250 }).map(at),
    }),
    { maxLength: 4 },
  ),
  finishedMs: fc.option(fc.integer({ min: 0, max: 300 }).map(at)),
  openedMs: fc.option(fc.integer({ min: -20, max: 0 }).map(at)),
});

describe('the stages, for any holds and moves', () => {
  const profiles = fc.constantFrom(
    plainProfile(),
    morningProfile(),
    plainProfile({ stages: [plainStage('closed', 0)] }),
  );

  it('follow each other in order, without gap or overlap, each with some duration', () => {
    fc.assert(
      fc.property(profiles, anyTimes, (document, times) => {
        const order = ['loading', 'closed', 'venting', 'hardening'];
        const spans = planStages(document, timesOf(times), at(300));
        for (const [index, span] of spans.entries()) {
          expect(span.endMs).toBeGreaterThan(span.startMs);
          const next = spans[index + 1];
          if (next === undefined) continue;
          expect(next.startMs).toBe(span.endMs);
          expect(order.indexOf(next.stage)).toBeGreaterThan(order.indexOf(span.stage));
        }
      }),
    );
  });

  it('have a pace that covers the stage and never falls', () => {
    fc.assert(
      fc.property(profiles, anyTimes, (document, times) => {
        for (const { startMs, endMs, pace } of planStages(document, timesOf(times), at(300))) {
          if (pace === undefined) continue;
          expect([pace[0]?.atMs, pace.at(-1)?.atMs]).toEqual([startMs, endMs]);
          const shares = pace.map(({ share }) => share);
          const instants = pace.map(({ atMs }) => atMs);
          expect(shares).toEqual([...shares].sort((a, b) => a - b));
          expect(instants).toEqual([...instants].sort((a, b) => a - b));
          expect(shares.at(-1)).toBeLessThanOrEqual(1 + 1e-12);
        }
      }),
    );
  });

  it('begin no later for a hold less', () => {
    fc.assert(
      fc.property(anyTimes, (times) => {
        const later = planStages(morningProfile(), timesOf({ ...times, moves: [] }), at(300));
        const sooner = planStages(
          morningProfile(),
          timesOf({ ...times, moves: [], holds: times.holds.slice(1) }),
          at(300),
        );
        for (const span of later) {
          const same = sooner.find(({ stage }) => stage === span.stage);
          expect(same?.startMs ?? -Infinity).toBeLessThanOrEqual(span.startMs);
        }
      }),
    );
  });
});
