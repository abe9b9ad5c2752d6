// Times the overheating of the demo: when the shade must have been left open so that 28 °C is crossed a given time from now.
import { MINUTE_MS, SECOND_MS } from '../../shared/units.ts';
import type { Scenario } from './crew.ts';
import { type ChamberOptions, createLiveChamber } from './live-chamber.ts';

type UnplannedChamber = Omit<ChamberOptions, 'scenario' | 'startMs' | 'stepMs'>;

const HOT = 28;
/** The first guess of how long the tent takes to get hot, and the longest it may take at all. */
const FIRST_GUESS_MS = 4 * MINUTE_MS;
const LONGEST_MS = 20 * MINUTE_MS;

/**
 * The `overheat` scenario in which the hotter canopy probe passes 28 °C `untilHotMs` after `nowMs`, give or take some seconds:
 * the tent is tried and its start moved, twice. Where the sun is too weak to get it there, the shade is left open at `nowMs`
 * and the tent merely grows warm.
 */
export function planOverheat(chamber: UnplannedChamber, nowMs: number, untilHotMs: number): Scenario {
  let fromMs = nowMs + untilHotMs - FIRST_GUESS_MS;
  for (let attempt = 0; attempt < 2; attempt += 1) {
    const hotMs = findHot(chamber, fromMs);
    if (hotMs === null) return { kind: 'overheat', fromMs: nowMs, rescueMs: null };
    fromMs += nowMs + untilHotMs - hotMs;
  }
  return { kind: 'overheat', fromMs: Math.min(nowMs, fromMs), rescueMs: null };
}

/** When the hotter canopy probe first passes 28 °C if the shade is open from `fromMs`; null when it does not. */
function findHot(chamber: UnplannedChamber, fromMs: number): number | null {
  const scenario = { kind: 'overheat', fromMs, rescueMs: null } as const;
  const trial = createLiveChamber({ ...chamber, scenario, startMs: fromMs, stepMs: 5 * SECOND_MS });
  const readings = trial.advanceTo(fromMs + LONGEST_MS);
  const hot = readings.find(({ canopy }) => Math.max(canopy[0].temperature, canopy[1].temperature) > HOT);
  return hot?.timeMs ?? null;
}
