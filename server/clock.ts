// Time as the server gets it. Everything that decides takes it from here, so that a test or the demo can give its own.
import { uptime } from 'node:os';
import { SECOND_MS } from '../shared/units.ts';

export interface Clock {
  /** Milliseconds since the epoch, UTC. */
  nowMs(): number;
  /** Milliseconds since some instant, by a clock that nobody sets and that goes on while the machine sleeps: for telling how long something took. */
  steadyMs(): number;
}

export const systemClock: Clock = { nowMs: () => Date.now(), steadyMs: () => uptime() * SECOND_MS };
