// Deadband, on-delay and off-delay of one condition with two levels. Pure; its memory is plain JSON and survives a restart.
import type { Level } from './alarm.ts';

/** Per level (index 0 = level 1): whether it stands, and since when the opposite has been seen. */
export interface DebounceMemory {
  readonly stands: readonly [boolean, boolean];
  readonly turningSinceMs: readonly [number | null, number | null];
}

export interface Delays {
  /** How long the condition must be seen before it counts, ms, for level 1 and 2. */
  readonly onDelayMs: readonly [number, number];
  readonly offDelayMs: number;
}

export const calmMemory: DebounceMemory = { stands: [false, false], turningSinceMs: [null, null] };

/** The level that stands in a memory. */
export function standingLevel(memory: DebounceMemory): Level {
  if (memory.stands[1]) return 2;
  return memory.stands[0] ? 1 : 0;
}

/**
 * Takes one judgement into the memory. `unknown` (no climate) neither raises nor clears, and keeps what was pending:
 * a tent that was heating when its probe fell silent is told with the first reading after, not a delay later.
 */
export function debounce(
  memory: DebounceMemory,
  seen: Level | 'unknown',
  nowMs: number,
  delays: Delays,
): DebounceMemory {
  if (seen === 'unknown') return memory;
  const second = turn(memory, 1, seen >= 2, nowMs, delays);
  // Beyond the outer limit is beyond the inner one too, however long the delay of that is.
  const first = turn(second.stands ? withFirst(memory) : memory, 0, seen >= 1, nowMs, delays);
  return { stands: [first.stands, second.stands], turningSinceMs: [first.since, second.since] };
}

function withFirst({ stands, turningSinceMs }: DebounceMemory): DebounceMemory {
  if (stands[0]) return { stands, turningSinceMs };
  return { stands: [true, stands[1]], turningSinceMs: [null, turningSinceMs[1]] };
}

function turn(memory: DebounceMemory, index: 0 | 1, seen: boolean, nowMs: number, delays: Delays) {
  const stands = memory.stands[index];
  if (seen === stands) return { stands, since: null };
  const since = Math.min(memory.turningSinceMs[index] ?? nowMs, nowMs);
  const delayMs = seen ? delays.onDelayMs[index] : delays.offDelayMs;
  return nowMs - since >= delayMs ? { stands: seen, since: null } : { stands, since };
}

/** True when both memories say the same. */
export function sameMemory(a: DebounceMemory, b: DebounceMemory): boolean {
  return [0, 1].every((i) => a.stands[i] === b.stands[i] && a.turningSinceMs[i] === b.turningSinceMs[i]);
}
