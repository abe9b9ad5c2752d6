// Scenes of a tent for the tests of alarms: one batch, one corridor, and whatever a test says of the air and the probes.
import type { Scene, SceneProbe } from '../../../shared/alarms/rules/rule.ts';
import type { ChamberClimate } from '../../../shared/readings/chamber-climate.ts';
import { MINUTE_MS } from '../../../shared/units.ts';

/** A Sunday at noon. */
export const NOON_MS = Date.UTC(2026, 2, 1, 12);

/** Limits that all rules watch: high humidity too. */
export const corridor = {
  temperature: { lowLow: 16, low: 20, high: 28, highHigh: 29 },
  humidity: { lowLow: 80, low: 85, high: 95, highHigh: 98 },
} as const;

/** Air that is inside every limit, all probes agreeing. */
export const calmAir: ChamberClimate = climateOf(24, 90);

/** The climate of a tent whose probes all say the same; null = nobody says. */
export function climateOf(temperature: number | null, humidity: number | null): ChamberClimate {
  const probes = temperature === null && humidity === null ? 0 : 1;
  return {
    timeMs: probes === 0 ? null : NOON_MS,
    ...{ temperature, hottest: temperature, coldest: temperature },
    ...{ humidity, driest: humidity, wettest: humidity },
    vpdKpa: null,
    dewPoint: null,
    healthyProbes: probes,
    canopyProbes: 1,
  };
}

/** A scene `afterMs` noon; calm unless said otherwise. */
export function sceneAt(afterMs: number, change: Partial<Scene> = {}): Scene {
  return {
    nowMs: NOON_MS + afterMs,
    chamberId: 'tent-1',
    batchId: 'batch-1',
    corridor,
    climate: calmAir,
    probes: [],
    ...change,
  };
}

/** A canopy probe heard `agoMs` before noon, allowed to be silent for 15 minutes. */
export function probeHeard(agoMs: number | null, change: Partial<SceneProbe> = {}): SceneProbe {
  return {
    probeId: 'p1',
    place: 'canopy',
    lastHeardMs: agoMs === null ? null : NOON_MS - agoMs,
    watchedSinceMs: NOON_MS - 24 * 60 * MINUTE_MS,
    silenceMs: 15 * MINUTE_MS,
    ...change,
  };
}
