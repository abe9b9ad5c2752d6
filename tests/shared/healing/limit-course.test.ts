// The raw course of one limit over one stage: constants, ramps, stairs, levels, open stages and held ones.
import { describe, expect, it } from 'vitest';
import type { StageSpan } from '../../../shared/healing/batch-clock.ts';
import { limitPieces, valueOfPiece } from '../../../shared/healing/limit-course.ts';
import type { Limit, LimitEnd } from '../../../shared/healing/profile.ts';

const basis = 'ours';
const span: StageSpan = { stage: 'venting', startMs: 1000, endMs: 1400 };
const resolve = (end: LimitEnd) => (typeof end === 'number' ? end : end.fallback);
const course = (limit: Limit, over: StageSpan = span) =>
  limitPieces(limit, over, resolve).map(({ fromMs, toMs, fromValue, toValue }) => [fromMs, toMs, fromValue, toValue]);

describe('the course of a limit', () => {
  it('constant is one level piece', () => {
    expect(course({ shape: 'constant', value: 28, basis })).toEqual([[1000, 1400, 28, 28]]);
  });

  it('ramp is straight from its beginning to its end', () => {
    expect(course({ shape: 'ramp', from: 20, to: 16, basis })).toEqual([[1000, 1400, 20, 16]]);
  });

  it('stairs step at once and end at `to`: step i stands at from + (to − from)·(i + 1)/n', () => {
    expect(course({ shape: 'stairs', from: 90, to: 50, steps: 4, basis })).toEqual([
      [1000, 1100, 80, 80],
      [1100, 1200, 70, 70],
      [1200, 1300, 60, 60],
      [1300, 1400, 50, 50],
    ]);
  });

  it('stairs end at exactly `to`, whatever the number of steps', () => {
    for (let steps = 1; steps <= 48; steps++) {
      const last = course({ shape: 'stairs', from: 95.8, to: 31.1, steps, basis }).at(-1);
      expect(last).toEqual([expect.any(Number), 1400, 31.1, 31.1]);
    }
  });

  it('levels share the stage equally', () => {
    expect(course({ shape: 'levels', values: [92, 90, { houseOffset: 0, fallback: 60 }, 55], basis })).toEqual([
      [1000, 1100, 92, 92],
      [1100, 1200, 90, 90],
      [1200, 1300, 60, 60],
      [1300, 1400, 55, 55],
    ]);
  });

  it('takes the end of a ramp and of stairs from the house', () => {
    const to = { houseOffset: -10, fallback: 50 };
    expect(course({ shape: 'ramp', from: 90, to, basis })).toEqual([[1000, 1400, 90, 50]]);
    expect(course({ shape: 'stairs', from: 90, to, steps: 1, basis })).toEqual([[1000, 1400, 50, 50]]);
  });
});

describe('a stage that is still open', () => {
  const open: StageSpan = { stage: 'loading', startMs: 1000, endMs: null };
  const rows: { limit: Limit; value: number }[] = [
    { limit: { shape: 'constant', value: 28, basis }, value: 28 },
    { limit: { shape: 'ramp', from: 90, to: 50, basis }, value: 90 },
    { limit: { shape: 'stairs', from: 90, to: 50, steps: 4, basis }, value: 90 },
    { limit: { shape: 'levels', values: [92, 50], basis }, value: 92 },
  ];
  it.each(rows)('does not move along $limit.shape', ({ limit, value }) => {
    expect(course(limit, open)).toEqual([[1000, Infinity, value, value]]);
  });
});

describe('a stage that was held or cut short', () => {
  const held: StageSpan = {
    ...span,
    pace: [
      { atMs: 1000, share: 0 },
      { atMs: 1150, share: 0.5 },
      { atMs: 1250, share: 0.5 },
      { atMs: 1400, share: 1 },
    ],
  };

  it('lets a ramp stand during the hold', () => {
    expect(course({ shape: 'ramp', from: 90, to: 50, basis }, held)).toEqual([
      [1000, 1150, 90, 70],
      [1150, 1250, 70, 70],
      [1250, 1400, 70, 50],
    ]);
  });

  it('takes no step during the hold', () => {
    expect(course({ shape: 'stairs', from: 90, to: 60, steps: 3, basis }, held)).toEqual([
      [1000, 1100, 80, 80],
      [1100, 1300, 70, 70],
      [1300, 1400, 60, 60],
    ]);
  });

  it('leaves out the steps it never came to', () => {
    const cut = {
      ...span,
      pace: [
        { atMs: 1000, share: 0 },
        { atMs: 1400, share: 0.6 },
      ],
    };
    const pieces = course({ shape: 'stairs', from: 90, to: 50, steps: 4, basis }, cut);
    expect(pieces.map(([, , value]) => value)).toEqual([80, 70, 60]);
    expect(pieces.at(-1)?.[1]).toBe(1400);
  });
});

describe('the value of a piece', () => {
  it('is exact at both ends and straight between', () => {
    const piece = { fromMs: 1000, toMs: 1400, fromValue: 20, toValue: 16 };
    expect([1000, 1100, 1400].map((atMs) => valueOfPiece(piece, atMs))).toEqual([20, 19, 16]);
  });

  it('is the same for ever on an open piece', () => {
    expect(valueOfPiece({ fromMs: 0, toMs: Infinity, fromValue: 5, toValue: 5 }, 1e15)).toBe(5);
  });
});
