// Gaps in the watch: when a stretch counts as one, how long buffers are waited for, and that each is told once.
import { describe, expect, it } from 'vitest';
import {
  followOutage,
  isCutOff,
  isSettling,
  moveOutage,
  noOutage,
  type OutageMemory,
  type OutageRound,
} from '../../../../shared/alarms/service/follow-outage.ts';
import { HOUR_MS, MINUTE_MS, SECOND_MS } from '../../../../shared/units.ts';

const NOON_MS = Date.UTC(2026, 2, 1, 12);
const calm = { awayMs: 5 * SECOND_MS, canHear: true, isEachHeard: false, lateMs: null };
const round = (atMs: number, more: Partial<OutageRound> = {}): OutageRound => ({
  ...calm,
  nowMs: NOON_MS + atMs,
  ...more,
});
const alive: OutageMemory = { ...noOutage, aliveMs: NOON_MS };

/** Takes rounds one after another; answers with what each told. */
function follow(before: OutageMemory, rounds: readonly OutageRound[]) {
  let memory = before;
  const told = rounds.map((one) => {
    const step = followOutage(memory, one);
    memory = step.memory;
    return step.due;
  });
  return { memory, told };
}

describe('a stop', () => {
  it.each([
    { minutes: 5, isGap: false, why: 'a restart or an update' },
    { minutes: 5.1, isGap: true, why: 'longer than that' },
  ])('of $minutes min: a gap is $isGap, $why', ({ minutes, isGap }) => {
    const { memory } = follow(alive, [round(minutes * MINUTE_MS, { awayMs: minutes * MINUTE_MS })]);
    expect(isSettling(memory)).toBe(isGap);
    expect(isCutOff(memory)).toBe(isGap);
  });

  const back = round(47 * MINUTE_MS, { awayMs: 47 * MINUTE_MS });
  const gap = { cause: 'stopped', fromMs: NOON_MS, toMs: NOON_MS + 47 * MINUTE_MS };

  it.each([
    { after: 19 * SECOND_MS, heard: true, lateAt: null, told: false, why: 'a buffer may yet begin' },
    { after: 20 * SECOND_MS, heard: true, lateAt: null, told: true, why: 'all are heard and nothing late comes' },
    { after: 60 * SECOND_MS, heard: true, lateAt: 41 * SECOND_MS, told: false, why: 'buffers are still coming' },
    { after: 61 * SECOND_MS, heard: true, lateAt: 41 * SECOND_MS, told: true, why: 'they have ended' },
    { after: 179 * SECOND_MS, heard: false, lateAt: null, told: false, why: 'a probe is not heard yet' },
    { after: 180 * SECOND_MS, heard: false, lateAt: null, told: true, why: 'it is not waited for any longer' },
  ])('is told after $after ms: $told, for $why', ({ after, heard, lateAt, told }) => {
    const lateMs = lateAt === null ? null : gap.toMs + lateAt;
    const { told: all } = follow(alive, [back, round(47 * MINUTE_MS + after, { isEachHeard: heard, lateMs })]);
    expect(all).toEqual([null, told ? gap : null]);
  });

  it('is told once, also when the service is killed and started while it waits', () => {
    const { memory } = follow(alive, [back]);
    const restored: OutageMemory = JSON.parse(JSON.stringify(memory));
    const rounds = [1, 2, 3, 4].map((minutes) => round((47 + minutes) * MINUTE_MS));
    expect(follow(restored, rounds).told).toEqual([null, null, gap, null]);
  });

  it('that is followed by another before it is told is one gap with it', () => {
    const { memory } = follow(alive, [back, round(60 * MINUTE_MS, { awayMs: 12 * MINUTE_MS })]);
    expect(memory.settling).toEqual({ cause: 'stopped', fromMs: NOON_MS, toMs: NOON_MS + 60 * MINUTE_MS });
  });

  it('lasts on while no reading can come in', () => {
    const deaf = round(50 * MINUTE_MS, { canHear: false });
    const { memory, told } = follow(alive, [back, deaf, round(70 * MINUTE_MS, { canHear: false })]);
    expect(told).toEqual([null, null, null]);
    expect(memory.settling).toMatchObject({ fromMs: NOON_MS, toMs: NOON_MS + 70 * MINUTE_MS });
    expect(isSettling(memory)).toBe(false);
  });
});

describe('a broker that is lost', () => {
  const lost = round(0, { canHear: false });

  it('makes silence say nothing from its first moment', () => {
    expect(isCutOff(follow(alive, [lost]).memory)).toBe(true);
  });

  it.each([
    { minutes: 5, told: false, why: 'hardly anything was missed' },
    { minutes: 6, told: true, why: 'longer than five minutes' },
  ])('for $minutes min: told $told, $why', ({ minutes, told }) => {
    const rounds = [lost, round(minutes * MINUTE_MS), round((minutes + 3) * MINUTE_MS)];
    const gap = { cause: 'broker', fromMs: NOON_MS, toMs: NOON_MS + minutes * MINUTE_MS };
    expect(follow(alive, rounds).told).toEqual([null, null, told ? gap : null]);
  });
});

it('goes on knowing that the clock was set back', () => {
  const setBack = { atMs: NOON_MS - HOUR_MS, aheadToMs: NOON_MS + HOUR_MS };
  expect(followOutage({ ...alive, setBack }, round(SECOND_MS)).memory).toMatchObject({
    ...{ aliveMs: NOON_MS + SECOND_MS, setBack },
  });
});

it('moves with a clock that is set', () => {
  const memory = {
    aliveMs: 1,
    lostSinceMs: 2,
    settling: { cause: 'stopped', fromMs: 3, toMs: 4 },
    setBack: null,
  } as const;
  expect(moveOutage(memory, 10)).toEqual({
    ...{ aliveMs: 11, lostSinceMs: 12 },
    settling: { cause: 'stopped', fromMs: 13, toMs: 14 },
    setBack: null,
  });
});
