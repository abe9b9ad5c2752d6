// One value of one quantity at one instant, as the quality tests take it; null = nothing usable was measured then.
import type { Flag } from '../reading.ts';

export interface Sample {
  readonly timeMs: number;
  readonly value: number | null;
}

/** A sample that has a value. */
export interface Measured {
  readonly timeMs: number;
  readonly value: number;
}

/** What a streaming test answers: its memory after the sample (plain JSON), and the flag. */
export interface Tested<Memory> {
  readonly memory: Memory;
  readonly flag: Flag;
}
