// The tent that overheats in the demo: warm at the start, hot within two minutes, cool again when somebody comes.
import { describe, expect, it } from 'vitest';
import { type ChamberReadings, createLiveChamber } from '../../../server/demo/live-chamber.ts';
import { planOverheat } from '../../../server/demo/plan-overheat.ts';
import { MINUTE_MS, SECOND_MS } from '../../../shared/units.ts';
import { options } from './chamber-cases.ts';

describe.each([
  { local: '11:00', why: 'the earliest start of the demo' },
  { local: '12:15', why: 'in between' },
  { local: '13:29', why: 'the latest' },
])('an overheating tent at $local: $why', ({ local }) => {
  const nowMs = Date.parse(`2026-04-08T${local}:00+02:00`);
  const scenario = planOverheat(options, nowMs, MINUTE_MS);
  const hot = createLiveChamber({ ...options, scenario });
  const past = hot.advanceTo(nowMs - 1);
  const present = hot.advanceTo(nowMs + 15 * MINUTE_MS, 5 * SECOND_MS);
  const hottest = ({ canopy }: ChamberReadings): number => Math.max(canopy[0].temperature, canopy[1].temperature);
  const passes = (limit: number): number =>
    ((present.find((r) => hottest(r) > limit)?.timeMs ?? Number.NaN) - nowMs) / SECOND_MS;

  it('is below 28 °C until the start', () => {
    expect(Math.max(...past.map(hottest))).toBeLessThan(28);
  });

  it('passes 28 °C about a minute after the start and 29 °C within two minutes more', () => {
    expect(passes(28)).toBeGreaterThanOrEqual(40);
    expect(passes(28)).toBeLessThanOrEqual(80);
    expect(passes(29)).toBeGreaterThan(passes(28) + 30);
    expect(passes(29)).toBeLessThanOrEqual(180);
  });

  it('stays hot as long as nobody comes, and cools again when it is shaded and opened', () => {
    expect(hottest(present.at(-1) ?? present[0] ?? failEmpty())).toBeGreaterThan(30);
    hot.shadeAndOpen(nowMs + 15 * MINUTE_MS);
    const after = hot.advanceTo(nowMs + 30 * MINUTE_MS, MINUTE_MS);
    expect(hottest(after.at(-1) ?? failEmpty())).toBeLessThan(26.5);
  });
});

describe('planOverheat', () => {
  it('leaves the shade open at once where the sun cannot make it hot', () => {
    const midnightMs = Date.parse('2026-04-08T00:00:00+02:00');
    expect(planOverheat(options, midnightMs, MINUTE_MS)).toEqual({
      kind: 'overheat',
      fromMs: midnightMs,
      rescueMs: null,
    });
  });
});

function failEmpty(): never {
  throw new Error('there are no readings');
}
