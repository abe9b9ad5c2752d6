// The demo's past is a well-run healing: it stays in the corridor of the profile that its batches follow, so that only the hot tent alarms.
import { describe, expect, it } from 'vitest';
import { type DemoChamber, type DemoNursery, describeDemoNursery } from '../../../server/demo/demo-scenario.ts';
import { type ChamberReadings, createLiveChamber } from '../../../server/demo/live-chamber.ts';
import { planStages } from '../../../shared/healing/batch-clock.ts';
import { makeCorridor } from '../../../shared/healing/corridor.ts';
import { findStandardProfile } from '../../../shared/healing/standard-profiles.ts';
import { MINUTE_MS } from '../../../shared/units.ts';

/** Half the usual deadband: what goes beyond a limit by less is no alarm. */
const TEMPERATURE_MARGIN = 0.25;
const HUMIDITY_MARGIN = 1;

function readPast(nursery: DemoNursery, chamber: DemoChamber, nowMs: number): readonly ChamberReadings[] {
  const { seed, scenario, batch } = chamber;
  return createLiveChamber({
    ...{ seed, scenario, zone: nursery.zone, weatherSeed: nursery.weatherSeed, filmProbe: false, stepMs: MINUTE_MS },
    ...{ closedMs: batch.closedMs, startMs: batch.openedMs },
  }).advanceTo(nowMs);
}

/** How far the readings go beyond the limits of the tomato profile at most, °C and %RH; 0 = never. */
function furthestOut(
  nursery: DemoNursery,
  chamber: DemoChamber,
  nowMs: number,
): { temperature: number; humidity: number } {
  const { openedMs, closedMs } = chamber.batch;
  const times = { openedMs, closedMs, finishedMs: null, zone: nursery.zone, holds: [], moves: [] };
  const document = findStandardProfile('tomato-common-practice')?.document;
  if (document === undefined) throw new Error('the tomato profile is not shipped any more');
  const past = readPast(nursery, chamber, nowMs);
  const lastDay = past.slice(-1440);
  const houseHumidity = lastDay.reduce((sum, { house }) => sum + house.humidity, 0) / lastDay.length;
  const corridorAt = makeCorridor(document, planStages(document, times, nowMs), {
    temperature: null,
    humidity: houseHumidity,
  });
  const worst = { temperature: 0, humidity: 0 };
  for (const { timeMs, canopy } of past) {
    const corridor = corridorAt(timeMs);
    for (const quantity of ['temperature', 'humidity'] as const) {
      const values = canopy.map((probe) => probe[quantity]);
      const above = Math.max(...values) - (corridor?.[quantity].high ?? Infinity);
      const below = (corridor?.[quantity].low ?? -Infinity) - Math.min(...values);
      worst[quantity] = Math.max(worst[quantity], above, below);
    }
  }
  return worst;
}

describe.each(['2026-03-02T10:30:00Z', '2026-06-01T00:20:00Z', '2026-11-25T12:00:00Z', '2026-12-20T07:20:00Z'])(
  'the demo at %s',
  (at) => {
    const nowMs = Date.parse(at);
    const nursery = describeDemoNursery(nowMs);
    const beforeHeat = nursery.chambers.map(({ scenario }) => (scenario.kind === 'overheat' ? scenario.fromMs : nowMs));

    it.each(
      nursery.chambers.map((chamber, index) => ({ chamber, name: chamber.name, untilMs: beforeHeat[index] ?? nowMs })),
    )('has a past within the corridor in $name', ({ chamber, untilMs }) => {
      const { temperature, humidity } = furthestOut(nursery, chamber, untilMs);
      expect(temperature).toBeLessThan(TEMPERATURE_MARGIN);
      expect(humidity).toBeLessThan(HUMIDITY_MARGIN);
    });
  },
);
