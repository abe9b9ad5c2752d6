// What the fit of the air exchange rests on, out of the store: the log's changes of the gap, and the trusted readings around each of them.
import type { Batch } from '../../shared/healing/batch.ts';
import { FLAG, type Flag, type Reading } from '../../shared/readings/reading.ts';
import { HOUR_MS, SECOND_MS } from '../../shared/units.ts';
import {
  type ExchangeRecord,
  gapChanges,
  LONGEST_WINDOW_MS,
  type VentLogEntry,
} from '../../shared/venting/cut-windows.ts';
import { type AirPoint, joinSameProbes, type ProbeTrack } from '../../shared/venting/same-probes.ts';
import { findSources, type ProbeSource } from '../record/record-sources.ts';
import type { Store } from '../store/store.ts';

/** Before a change and after its window: for the last reading before it, and for house air around it. */
const MARGIN_MS = HOUR_MS;
/** Readings closer together than this say nothing more of a course that takes minutes, and cost as much (ours). */
const LEAST_STEP_MS = 10 * SECOND_MS;

interface Stretch {
  readonly fromMs: number;
  readonly toMs: number;
}

interface ExchangeSite {
  readonly altitudeM: number;
  readonly nowMs: number;
}

/** Reads only the stretches in which the gap was changed, never the whole batch. */
export async function gatherExchange(
  store: Store,
  batch: Batch,
  log: readonly VentLogEntry[],
  { altitudeM, nowMs }: ExchangeSite,
): Promise<ExchangeRecord> {
  const untilMs = batch.finishedMs ?? nowMs;
  const stretches = stretchesOf(log, untilMs);
  const sources = await findSources(store, batch, { fromMs: batch.openedMs, toMs: untilMs });
  const airOf = async (place: ProbeSource['place']) => {
    const tracks: ProbeTrack[] = [];
    for (const source of sources.filter((one) => one.place === place)) {
      tracks.push({ silenceMs: source.silenceMs, points: await readPoints(store, source, stretches) });
    }
    return joinSameProbes(tracks);
  };
  const [chamber, house] = [await airOf('canopy'), await airOf('house')];
  const silenceMs = Math.min(chamber.silenceMs, house.silenceMs);
  return { log, chamber: chamber.points, house: house.points, altitudeM, silenceMs, untilMs };
}

/** The times around the changes of the gap, in order, overlapping ones as one. */
function stretchesOf(log: readonly VentLogEntry[], untilMs: number): Stretch[] {
  const stretches: Stretch[] = [];
  for (const { atMs } of gapChanges(log)) {
    const [fromMs, toMs] = [atMs - MARGIN_MS, Math.min(untilMs, atMs + LONGEST_WINDOW_MS + MARGIN_MS)];
    const last = stretches.at(-1);
    if (last === undefined || last.toMs < fromMs) stretches.push({ fromMs, toMs });
    else stretches[stretches.length - 1] = { fromMs: last.fromMs, toMs: Math.max(last.toMs, toMs) };
  }
  return stretches;
}

async function readPoints(
  store: Pick<Store, 'readings'>,
  source: ProbeSource,
  stretches: readonly Stretch[],
): Promise<AirPoint[]> {
  const points: AirPoint[] = [];
  for (const stretch of stretches) {
    const fromMs = Math.max(stretch.fromMs, source.fromMs);
    const toMs = Math.min(stretch.toMs, source.toMs);
    if (fromMs > toMs) continue;
    for await (const reading of store.readings.range(source.probe, fromMs, toMs)) {
      const point = trustedAir(reading);
      if (point !== null && point.timeMs - (points.at(-1)?.timeMs ?? -Infinity) >= LEAST_STEP_MS) points.push(point);
    }
  }
  return points;
}

function trustedAir({ timeMs, temperature, humidity, temperatureFlag, humidityFlag }: Reading): AirPoint | null {
  if (temperature === null || humidity === null || !isTrusted(temperatureFlag) || !isTrusted(humidityFlag)) return null;
  return { timeMs, temperature, humidity };
}

function isTrusted(flag: Flag): boolean {
  return flag === FLAG.pass || flag === FLAG.notEvaluated;
}
