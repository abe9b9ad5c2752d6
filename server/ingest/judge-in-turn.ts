// Readings that are newer than all of their probe: judged from the memory of what came before, without asking the store.
import { qualityLimitsAt } from '../../shared/readings/quality/quality-limits.ts';
import { flagsAt, type QualityState } from '../../shared/readings/quality/quality-run.ts';
import type { ProbeState } from '../watch/probe-book.ts';
import { type Arrivals, bringsMore, type Incoming } from './gather-arrivals.ts';
import { type JudgedProbe, ProbeRun } from './probe-run.ts';

/** A probe whose memory is at hand. */
export type RememberedProbe = ProbeState & { readonly quality: QualityState };

/**
 * True when none is older than the newest, nothing is stored after that, and the probe stands where it stood then: its limits are those of its
 * place.
 */
export function isInTurn({ state, readings }: Arrivals): boolean {
  const { probe, newest, storedToMs, countsFromMs } = state;
  if (storedToMs > (newest?.timeMs ?? 0)) return false;
  const sinceMs = Math.max(newest?.timeMs ?? 0, probe.placement?.fromMs ?? 0, countsFromMs);
  return (readings[0]?.timeMs ?? sinceMs) >= sinceMs;
}

/** Those that do not repeat the newest reading. Ask only for what is in turn. */
export function leaveOutNewest({ state: { newest }, readings }: Arrivals): readonly Incoming[] {
  if (newest === null || readings[0]?.timeMs !== newest.timeMs) return readings;
  return bringsMore(readings[0], newest) ? readings : readings.slice(1);
}

/** Judges them. The first may complete the newest reading: then the whole of it is judged again. */
export function judgeInTurn(state: RememberedProbe, readings: Arrivals['readings']): JudgedProbe {
  const { newest, quality, probe } = state;
  const isCompleting = newest !== null && readings[0]?.timeMs === newest.timeMs;
  const limits = qualityLimitsAt(probe.placement?.place ?? null);
  const newestMs = readings.at(-1)?.timeMs ?? null;
  const run = new ProbeRun(isCompleting ? quality.before : quality.memory, newestMs, () => limits);
  if (newest !== null) run.know(newest);
  const previousMs = quality.before.timeMs;
  if (isCompleting && previousMs !== null) run.know(flagsAt(quality.memory, previousMs));
  for (const incoming of readings) run.take(incoming.timeMs === newest?.timeMs ? newest : null, incoming);
  return run.result(state);
}
