// Delays that run when the machine's clock is set go on as if it had not been: what was seen for ten seconds has still been seen for ten.
import type { DebounceMemory } from './debounce.ts';
import type { ChamberWatch, WatchEntry, WatchKey } from './watch-state.ts';

export interface MovedEntry {
  readonly key: WatchKey;
  readonly entry: WatchEntry;
}

/** The entries in which a delay runs, under a clock that was moved by so many ms. */
export function moveDelays({ entries }: ChamberWatch, byMs: number): MovedEntry[] {
  return Object.entries(entries).flatMap(([key, entry]) =>
    isRunning(entry.memory) ? [{ key, entry: { ...entry, memory: moved(entry.memory, byMs) } }] : [],
  );
}

function isRunning({ turningSinceMs }: DebounceMemory): boolean {
  return turningSinceMs.some((ms) => ms !== null);
}

function moved({ stands, turningSinceMs: [first, second] }: DebounceMemory, byMs: number): DebounceMemory {
  const move = (ms: number | null) => (ms === null ? null : ms + byMs);
  return { stands, turningSinceMs: [move(first), move(second)] };
}
