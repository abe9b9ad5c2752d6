// Compares the clock of the machine, which people and the network set, with one that nobody sets.
import { LEAST_JUMP_MS } from '../../shared/alarms/service/clock-jumped.ts';
import type { Clock } from '../clock.ts';

export interface ClockLook {
  /** How long the service had not run before the first look, ms; 0 afterwards. */
  readonly stoppedMs: number;
  /** How far the clock has jumped since, ms, positive = forward; null = it has not. */
  readonly jumpMs: number | null;
}

/**
 * `aliveMs`: when the service was last known to run, `newestMs`: the newest reading that is stored; null = not known. Before the first look only a
 * clock that went back can be told from time that has passed.
 */
export function createClockWatch(clock: Clock, aliveMs: number | null, newestMs: number | null): () => ClockLook {
  let last: { readonly nowMs: number; readonly steadyMs: number } | null = null;
  return () => {
    const here = { nowMs: clock.nowMs(), steadyMs: clock.steadyMs() };
    const before = last;
    last = here;
    if (before === null) return firstLook(here.nowMs, aliveMs, newestMs);
    const passedMs = here.steadyMs - before.steadyMs;
    return { stoppedMs: 0, jumpMs: jumpOf(here.nowMs - before.nowMs - passedMs) };
  };
}

function firstLook(nowMs: number, aliveMs: number | null, newestMs: number | null): ClockLook {
  const knownMs = Math.max(aliveMs ?? nowMs, newestMs ?? nowMs);
  const jumpMs = jumpOf(Math.min(0, nowMs - knownMs));
  return { stoppedMs: jumpMs === null && aliveMs !== null ? Math.max(0, nowMs - aliveMs) : 0, jumpMs };
}

function jumpOf(ms: number): number | null {
  return Math.abs(ms) > LEAST_JUMP_MS ? ms : null;
}
