// One series of air out of several probes that is of the same probes throughout: a probe that comes or goes would look like air on the move.
import { valueAt } from '../exposure/straight-line.ts';

/** Trusted air at an instant, both halves known. */
export interface AirPoint {
  readonly timeMs: number;
  readonly temperature: number;
  readonly humidity: number;
}

/** One probe, in order of time; its points may be joined when they are no further apart than `silenceMs`. */
export interface ProbeTrack {
  readonly silenceMs: number;
  readonly points: readonly AirPoint[];
}

/** A probe that is known for less than this share of the time of the best-known one is left out for all of it (ours). */
const LEAST_KNOWN = 0.95;

/**
 * The mean of the well-known probes at each instant of the best-known one; instants at which another of them is not known are left out. Empty
 * when no probe says anything. `silenceMs` is the shortest of the probes taken.
 */
export function joinSameProbes(tracks: readonly ProbeTrack[]): ProbeTrack {
  const byKnown = tracks
    .map((track) => ({ track, knownMs: knownMsOf(track) }))
    .filter(({ track }) => track.points.length > 0)
    .sort((a, b) => b.knownMs - a.knownMs);
  const best = byKnown[0];
  if (best === undefined) return { silenceMs: Infinity, points: [] };
  const taken = byKnown.filter(({ knownMs }) => knownMs >= LEAST_KNOWN * best.knownMs).map(({ track }) => track);
  const readers = taken.map(airReader);
  const points = best.track.points.flatMap(({ timeMs }) => {
    const airs = readers.flatMap((airAt) => airAt(timeMs) ?? []);
    return airs.length < readers.length ? [] : [meanAir(timeMs, airs)];
  });
  return { silenceMs: Math.min(...taken.map(({ silenceMs }) => silenceMs)), points };
}

function knownMsOf({ points, silenceMs }: ProbeTrack): number {
  return points.reduce((sum, { timeMs }, i) => {
    const gapMs = timeMs - (points[i - 1]?.timeMs ?? timeMs);
    return gapMs <= silenceMs ? sum + gapMs : sum;
  }, 0);
}

/** Reads a track at rising instants: on a point or on the line between two that may be joined. */
function airReader({ points, silenceMs }: ProbeTrack): (atMs: number) => AirPoint | null {
  let next = 0;
  return (atMs) => {
    while ((points[next]?.timeMs ?? Infinity) < atMs) next += 1;
    const [before, after] = [points[next - 1], points[next]];
    if (after?.timeMs === atMs) return after;
    if (before === undefined || after === undefined || after.timeMs - before.timeMs > silenceMs) return null;
    const on = (quantity: 'temperature' | 'humidity') =>
      valueAt(
        { fromMs: before.timeMs, toMs: after.timeMs, fromValue: before[quantity], toValue: after[quantity] },
        atMs,
      );
    return { timeMs: atMs, temperature: on('temperature'), humidity: on('humidity') };
  };
}

function meanAir(timeMs: number, airs: readonly AirPoint[]): AirPoint {
  const mean = (quantity: 'temperature' | 'humidity') =>
    airs.reduce((sum, air) => sum + air[quantity], 0) / airs.length;
  return { timeMs, temperature: mean('temperature'), humidity: mean('humidity') };
}
