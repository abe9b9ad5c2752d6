import { describe, expect, it } from 'vitest';
import { type Band, type CorridorSpan, createCorridorShare } from '../../../shared/exposure/corridor-share.ts';
import { HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';

type Readings = readonly (readonly [minute: number, value: number])[];

const steadyBand: Band = { low: 85, high: 95 };

function shareOf(readings: Readings, span: Partial<CorridorSpan> = {}) {
  const share = createCorridorShare({
    fromMs: 0,
    toMs: HOUR_MS,
    silenceMs: 15 * MINUTE_MS,
    bandAt: () => steadyBand,
    ...span,
  });
  for (const [minute, value] of readings) share.add(minute * MINUTE_MS, value);
  return share.result();
}

function flat(value: number): Readings {
  return Array.from({ length: 7 }, (_, i) => [i * 10, value] as const);
}

describe('the share of time in a corridor', () => {
  it.each([
    ['on the low limit', 85, 1],
    ['under it', 84.9, 0],
    ['on the high limit', 95, 1],
    ['over it', 95.1, 0],
  ])('a flat hour %s', (_why, value, share) => {
    expect(shareOf(flat(value))).toMatchObject({ share, knownHours: 1, judgedHours: 1 });
  });

  it('is exact where a straight line crosses steady limits', () => {
    // 80 to 100 in ten minutes: a quarter below 85, a quarter above 95.
    const { share, belowHours, aboveHours } = shareOf([
      [0, 80],
      [10, 100],
    ]);
    expect(share).toBeCloseTo(0.5, 9);
    expect(belowHours * 60).toBeCloseTo(2.5, 9);
    expect(aboveHours * 60).toBeCloseTo(2.5, 9);
  });

  it('is exact where a ramp of the limit crosses a steady value', () => {
    // The low limit climbs from 80 to 92 in an hour: 90 is under it for the last sixth.
    const bandAt = (ms: number) => ({ low: 80 + (12 * ms) / HOUR_MS, high: 100 });
    expect(shareOf(flat(90), { bandAt }).share).toBeCloseTo(5 / 6, 9);
  });

  it('is off by less than a minute at a limit that jumps', () => {
    const jumpMs = 33.3 * MINUTE_MS;
    const bandAt = (ms: number) => (ms < jumpMs ? steadyBand : { low: 91, high: 95 });
    const { insideHours } = shareOf(flat(90), { bandAt });
    expect(Math.abs(insideHours * 60 - 33.3)).toBeLessThan(1);
  });

  it('is off by far less than a minute at a limit that bends', () => {
    // Low limit 100 − (t − 30)²/90 with t in minutes: above 95 while |t − 30| < √450.
    const bandAt = (ms: number) => ({ low: 100 - (ms / MINUTE_MS - 30) ** 2 / 90, high: 200 });
    const { belowHours } = shareOf(flat(95), { bandAt });
    expect(belowHours * 60).toBeCloseTo(2 * Math.sqrt(450), 1);
  });

  it('does not judge the time without a band', () => {
    const bandAt = (ms: number) => (ms <= 30 * MINUTE_MS ? steadyBand : null);
    expect(shareOf(flat(90), { bandAt })).toMatchObject({ knownHours: 1, judgedHours: 0.5, share: 1 });
  });

  it('counts nothing across a gap, and nothing outside its span', () => {
    const readings: Readings = [
      [-10, 90],
      [5, 90],
      [21, 90],
      [30, 90],
      [55, 90],
      [65, 90],
    ];
    const { knownHours, insideHours } = shareOf(readings);
    expect(knownHours * 60).toBeCloseTo(5 + 9 + 5, 9);
    expect(insideHours).toBeCloseTo(knownHours, 9);
  });

  it.each([
    ['no reading', []],
    ['a lone reading', [[10, 90]] as Readings],
  ])('has no share of %s', (_why, readings) => {
    expect(shareOf(readings)).toMatchObject({ knownHours: 0, share: null });
  });

  it('passes over a reading that is not later than the last', () => {
    expect(
      shareOf([
        [0, 90],
        [5, 90],
        [5, 50],
        [3, 50],
        [10, 90],
      ]),
    ).toEqual(
      shareOf([
        [0, 90],
        [5, 90],
        [10, 90],
      ]),
    );
  });
});
