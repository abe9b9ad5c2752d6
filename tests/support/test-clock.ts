// A clock that a test sets: time is given, never slept through.
import type { Clock } from '../../server/clock.ts';

export interface TestClock extends Clock {
  set(ms: number): void;
  advance(ms: number): void;
  /** Somebody sets the machine's clock: time itself does not go on. */
  jump(ms: number): void;
}

export function createTestClock(startMs: number): TestClock {
  let nowMs = startMs;
  let jumpedMs = 0;
  return {
    nowMs: () => nowMs,
    steadyMs: () => nowMs - jumpedMs,
    set(ms) {
      nowMs = ms;
    },
    advance(ms) {
      nowMs += ms;
    },
    jump(ms) {
      nowMs += ms;
      jumpedMs += ms;
    },
  };
}
