// A clock that a test sets: time is given, never slept through.
import type { Clock } from '../../server/clock.ts';

export interface TestClock extends Clock {
  set(ms: number): void;
  advance(ms: number): void;
}

export function createTestClock(startMs: number): TestClock {
  let nowMs = startMs;
  return {
    nowMs: () => nowMs,
    set(ms) {
      nowMs = ms;
    },
    advance(ms) {
      nowMs += ms;
    },
  };
}
