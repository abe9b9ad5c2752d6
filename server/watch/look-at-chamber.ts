// A look at one chamber: what its probes show against its plan, as the rules are given it.
import type { Scene } from '../../shared/alarms/rules/rule.ts';
import { lookAhead } from '../../shared/forecast/heat-ahead.ts';
import { chamberClimate } from '../../shared/readings/chamber-climate.ts';
import { type ProbeState, probeNow } from './probe-book.ts';
import { careOf } from './scene-care.ts';
import { followTrends, type Trends } from './trends.ts';
import type { BatchPlan, WatchedChamber } from './watched-chamber.ts';

/** What a look shows, and what is remembered of the chamber's trends if the look is kept. */
export interface Looked {
  readonly scene: Scene;
  readonly trends: Trends;
}

interface LookParts {
  /** null = no batch is open there. */
  readonly plan: BatchPlan | null;
  /** Probes of any chamber; those that stand here and are in service count. */
  readonly probes: Iterable<ProbeState>;
  readonly nowMs: number;
  /** Of the site above sea, m. */
  readonly altitudeM: number;
  /** No reading can come in at present, so silence means nothing. */
  readonly isCutOff: boolean;
}

export function lookAtChamber({ chamber, healing, trends: known }: WatchedChamber, parts: LookParts): Looked {
  const { plan, nowMs } = parts;
  const own = [...parts.probes].filter(({ probe }) => probe.placement?.chamberId === chamber.id && !probe.outOfService);
  const readings = own.flatMap((state) => probeNow(state) ?? []);
  const corridor = plan?.corridorAt(nowMs) ?? null;
  const climate = chamberClimate(readings, nowMs, parts.altitudeM);
  const high = corridor?.temperature.high ?? null;
  const trends = followTrends(known, climate, high);
  const scene = {
    nowMs,
    chamberId: chamber.id,
    batchId: healing?.batch.id ?? null,
    corridor,
    climate,
    probes: own.flatMap(sceneProbe),
    readings,
    ...(healing !== null && plan !== null && careOf(healing, plan, nowMs)),
    ahead: high === null ? null : lookAhead(trends.heat, high),
    isCutOff: parts.isCutOff,
  };
  return { scene, trends };
}

function sceneProbe({ probe, newest, watchedSinceMs }: ProbeState): Scene['probes'] {
  if (probe.placement === null) return [];
  const { id: probeId, silenceMs } = probe;
  const sinceMs = Math.max(watchedSinceMs, probe.placement.fromMs);
  return [
    { probeId, place: probe.placement.place, lastHeardMs: newest?.timeMs ?? null, watchedSinceMs: sinceMs, silenceMs },
  ];
}
