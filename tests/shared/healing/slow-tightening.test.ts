// Grace: limits tighten no faster than their rate and loosen at once.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Piece, valueOfPiece } from '../../../shared/healing/limit-course.ts';
import { slowTightening } from '../../../shared/healing/slow-tightening.ts';
import { HOUR_MS } from '../../../shared/units.ts';

const piece = (fromHours: number, toHours: number, fromValue: number, toValue = fromValue): Piece => ({
  fromMs: fromHours * HOUR_MS,
  toMs: toHours * HOUR_MS,
  fromValue,
  toValue,
});

const values = (pieces: Piece[], side: 'low' | 'high', rate: number, hours: number[]) => {
  const limitAt = slowTightening(pieces, side, rate).valueAt;
  return hours.map((hour) => limitAt(hour * HOUR_MS));
};

describe('a limit with grace', () => {
  it('follows a step that tightens at its rate: a high limit comes down', () => {
    const pieces = [piece(0, 10, 100), piece(10, 20, 90)];
    expect(values(pieces, 'high', 5, [9, 10, 11, 12, 13])).toEqual([100, 100, 95, 90, 90]);
  });

  it('follows a step that tightens at its rate: a low limit goes up', () => {
    const pieces = [piece(0, 10, 75), piece(10, 20, 90)];
    expect(values(pieces, 'low', 5, [9, 10, 11, 12, 13, 14])).toEqual([75, 75, 80, 85, 90, 90]);
  });

  it('follows a step that loosens at once', () => {
    expect(values([piece(0, 10, 90), piece(10, 20, 100)], 'high', 5, [9.999, 10])).toEqual([90, 100]);
    expect(values([piece(0, 10, 90), piece(10, 20, 80)], 'low', 5, [9.999, 10])).toEqual([90, 80]);
  });

  it('reaches back over a stage shorter than the grace needs', () => {
    const pieces = [piece(0, 10, 100), piece(10, 11, 90), piece(11, 20, 80)];
    expect(values(pieces, 'high', 5, [10, 11, 12, 13, 14, 15])).toEqual([100, 95, 90, 85, 80, 80]);
  });

  it('follows a ramp that is slower than its rate exactly', () => {
    expect(values([piece(0, 10, 100, 90)], 'high', 5, [0, 5, 9])).toEqual([100, 95, 91]);
  });

  it('slows a ramp that is faster than its rate, and catches up after it', () => {
    const pieces = [piece(0, 1, 100, 90), piece(1, 20, 90)];
    expect(values(pieces, 'high', 5, [0, 1, 2, 3])).toEqual([100, 95, 90, 90]);
  });

  it('comes down from the top of a ramp that loosened', () => {
    const pieces = [piece(0, 10, 90, 100), piece(10, 20, 90)];
    expect(values(pieces, 'high', 5, [5, 10, 11, 12, 13])).toEqual([95, 100, 95, 90, 90]);
  });

  it('is null where no limit is set, and grace goes on through that time', () => {
    const pieces = [piece(0, 10, 100), piece(12, 20, 80)];
    expect(values(pieces, 'high', 5, [-1, 10, 11, 12, 13, 14, 20])).toEqual([null, null, null, 90, 85, 80, null]);
  });

  it('needs no beginning: an open piece is level for ever', () => {
    expect(values([piece(0, Infinity, 24)], 'high', 1, [0, 1e6])).toEqual([24, 24]);
  });
});

const anyCourse = fc
  .array(
    fc.record({
      hours: fc.integer({ min: 1, max: 30 }),
      from: fc.integer({ min: 40, max: 100 }),
      to: fc.integer({ min: 40, max: 100 }),
      gap: fc.constantFrom(0, 0, 0, 2),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((steps) => {
    let atHours = 0;
    return steps.map(({ hours, from, to, gap }) => {
      const start = atHours + gap;
      atHours = start + hours;
      return piece(start, atHours, from, to);
    });
  });

const anySide = fc.constantFrom('low' as const, 'high' as const);
const anyRate = fc.integer({ min: 1, max: 20 });
const sampledHours = Array.from({ length: 4 * 180 }, (_, i) => i / 4);

function rawAt(pieces: readonly Piece[], atMs: number): number | null {
  const found = pieces.find(({ fromMs, toMs }) => fromMs <= atMs && atMs < toMs);
  return found === undefined ? null : valueOfPiece(found, atMs);
}

describe('a limit with grace, whatever its course', () => {
  it('is the loosest of everything before, less the rate: checked against the definition', () => {
    fc.assert(
      fc.property(anyCourse, anySide, anyRate, fc.integer({ min: 0, max: 180 * 4 }), (pieces, side, rate, quarter) => {
        const sign = side === 'high' ? 1 : -1;
        const atMs = (quarter * HOUR_MS) / 4;
        const before = pieces.flatMap(({ fromMs, toMs, fromValue, toValue }) => [
          { ms: fromMs, value: fromValue },
          { ms: toMs, value: toValue },
        ]);
        const raw = rawAt(pieces, atMs);
        const sampled = sampledHours.flatMap((hour) => {
          const value = rawAt(pieces, hour * HOUR_MS);
          return value === null ? [] : [{ ms: hour * HOUR_MS, value }];
        });
        const loosest = [...before, ...sampled, ...(raw === null ? [] : [{ ms: atMs, value: raw }])]
          .filter(({ ms }) => ms <= atMs)
          .map(({ ms, value }) => sign * value - (rate * (atMs - ms)) / HOUR_MS);
        const limit = slowTightening(pieces, side, rate).valueAt(atMs);
        if (raw === null) expect(limit).toBeNull();
        else expect(sign * (limit ?? Number.NaN)).toBeCloseTo(Math.max(...loosest), 8);
      }),
    );
  });

  it('never tightens faster than its rate, and is never tighter than its course', () => {
    fc.assert(
      fc.property(anyCourse, anySide, anyRate, (pieces, side, rate) => {
        const sign = side === 'high' ? 1 : -1;
        const limitAt = slowTightening(pieces, side, rate).valueAt;
        let last: { hour: number; value: number } | null = null;
        for (const hour of sampledHours) {
          const value = limitAt(hour * HOUR_MS);
          if (value === null) continue;
          expect(sign * value).toBeGreaterThanOrEqual(sign * (rawAt(pieces, hour * HOUR_MS) ?? Number.NaN) - 1e-9);
          if (last !== null) expect(sign * (last.value - value)).toBeLessThanOrEqual(rate * (hour - last.hour) + 1e-9);
          last = { hour, value };
        }
      }),
    );
  });

  it('jumps only where its course loosens', () => {
    fc.assert(
      fc.property(anyCourse, anySide, anyRate, (pieces, side, rate) => {
        const sign = side === 'high' ? 1 : -1;
        const limitAt = slowTightening(pieces, side, rate).valueAt;
        for (const [index, next] of pieces.entries()) {
          const previous = pieces[index - 1];
          if (previous === undefined || previous.toMs !== next.fromMs) continue;
          const before = limitAt(next.fromMs - 1) ?? Number.NaN;
          const after = limitAt(next.fromMs) ?? Number.NaN;
          // A millisecond of the steepest ramp here, 60 an hour, is far below this.
          const jump = sign * (after - before) > 1e-3;
          expect(jump && sign * next.fromValue <= sign * previous.toValue).toBe(false);
          expect(sign * (before - after)).toBeLessThan(1e-3);
        }
      }),
    );
  });
});
