// VPD and late venting: both sides of each limit, deadband and delay.
import { describe, expect, it } from 'vitest';
import { vpdKpa } from '../../../../shared/air/vapour.ts';
import type { Level } from '../../../../shared/alarms/alarm.ts';
import { planLate } from '../../../../shared/alarms/rules/plan-late.ts';
import type { Scene } from '../../../../shared/alarms/rules/rule.ts';
import type { SceneCare } from '../../../../shared/alarms/rules/scene-care.ts';
import { vpd } from '../../../../shared/alarms/rules/vpd.ts';
import type { ChamberClimate } from '../../../../shared/readings/chamber-climate.ts';
import { HOUR_MS, MINUTE_MS } from '../../../../shared/units.ts';
import { climateOf, corridor, NOON_MS, sceneAt } from '../scenes.ts';

const noCare: SceneCare = {
  knownSinceMs: 0,
  checks: [],
  reports: [],
  vpd: null,
  ventingSinceMs: null,
  isGapOpen: false,
};

function airOf(temperature: number, humidity: number): ChamberClimate {
  return { ...climateOf(temperature, humidity), vpdKpa: vpdKpa(temperature, humidity) };
}

describe('vpd', () => {
  const bound = { highKpa: 0.76, sinceMs: NOON_MS - 24 * HOUR_MS };
  const judge = (climate: ChamberClimate, held: Level = 0, change: Partial<Scene> = {}) =>
    vpd.judge(sceneAt(0, { climate, care: { ...noCare, vpd: bound }, ...change }), () => held)[0];

  // At 28 °C saturation is 3.78 kPa, so that 80 %RH is 0.76 kPa and the ± of a wet probe, 2.24 %RH, is 0.085 kPa.
  it.each([
    { humidity: 85, held: 0, level: 0, why: 'below the bound' },
    { humidity: 79, held: 0, level: 0, why: 'above the bound, but it cannot be told' },
    { humidity: 77.7, held: 0, level: 0, why: 'the bound lies just within the uncertainty' },
    { humidity: 77.3, held: 0, level: 1, why: 'the bound lies just outside' },
    { humidity: 78.5, held: 1, level: 1, why: 'inside by less than the deadband' },
    { humidity: 79.5, held: 1, level: 0, why: 'inside by more than the deadband' },
  ] as const)('28 °C, $humidity %RH, held $held: level $level, $why', ({ humidity, held, level }) => {
    expect(judge(airOf(28, humidity), held)).toMatchObject({ level, limits: [0.76, null] });
  });

  it('names the VPD itself, not what is left of it', () => {
    expect(judge(airOf(28, 70))?.value).toBeCloseTo(1.135, 3);
  });

  it('neither raises nor clears where no probe says', () => {
    expect(judge(climateOf(28, 70))?.level).toBe('unknown');
  });

  it.each([
    { sinceMs: NOON_MS - 3 * HOUR_MS + 1, level: 0, why: 'the film has three hours to get wet' },
    { sinceMs: NOON_MS - 3 * HOUR_MS, level: 1, why: 'then it counts' },
  ])('after closing: $why', ({ sinceMs, level }) => {
    const care = { ...noCare, vpd: { highKpa: 0.76, sinceMs } };
    expect(judge(airOf(28, 60), 0, { care })?.level).toBe(level);
  });

  it('watches nothing where the profile names no bound', () => {
    expect(judge(airOf(28, 30), 0, { care: noCare })?.level).toBe(0);
  });
});

describe('late venting', () => {
  const care: SceneCare = { ...noCare, ventingSinceMs: NOON_MS - HOUR_MS, isGapOpen: true };
  const high = (limit: number) => ({ ...corridor, humidity: { ...corridor.humidity, high: limit } });
  const judge = (humidity: number | null, change: Partial<Scene> = {}, held: Level = 0) =>
    planLate.judge(
      sceneAt(0, { climate: climateOf(24, humidity), corridor: high(100), care, ...change }),
      () => held,
    )[0];

  it.each<{ humidity: number | null; limit: number; open: boolean; level: Level | 'unknown'; why: string }>([
    { humidity: 98, limit: 100, open: true, level: 0, why: 'not yet saturated as far as a probe can tell' },
    { humidity: 98.1, limit: 100, open: true, level: 1, why: 'saturated, though a gap is open' },
    { humidity: 95, limit: 100, open: false, level: 0, why: 'no gap is logged, but the air is that of an open tent' },
    { humidity: 95.1, limit: 100, open: false, level: 1, why: 'no gap is logged, and the air is that of a closed one' },
    { humidity: 80, limit: 80, open: true, level: 0, why: 'at the wet limit of the plan' },
    { humidity: 80.1, limit: 80, open: true, level: 1, why: 'above the wet limit of the plan' },
    { humidity: null, limit: 80, open: true, level: 'unknown', why: 'nobody says how wet it is' },
  ])('$why', ({ humidity, limit, open, level }) => {
    expect(judge(humidity, { corridor: high(limit), care: { ...care, isGapOpen: open } })?.level).toBe(level);
  });

  it.each([
    { humidity: 78.1, level: 1, why: 'inside by less than the deadband' },
    { humidity: 78, level: 0, why: 'inside by the deadband' },
  ] as const)('once it stands, $humidity %RH is $why', ({ humidity, level }) => {
    expect(judge(humidity, { corridor: high(80) }, 1)?.level).toBe(level);
  });

  it.each([
    { change: { care: noCare }, why: 'another stage, or the batch is on hold' },
    { change: { corridor: null }, why: 'no batch is in the chamber' },
  ])('is not watched: $why', ({ change }) => {
    expect(judge(99.5, change)?.level).toBe(0);
  });

  it('is told three hours after venting should have begun', () => {
    expect(planLate.onDelayMs[0]).toBe(180 * MINUTE_MS);
  });
});
