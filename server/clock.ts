// Time as the server gets it. Everything that decides takes it from here, so that a test or the demo can give its own.

export interface Clock {
  /** Milliseconds since the epoch, UTC. */
  nowMs(): number;
}

export const systemClock: Clock = { nowMs: () => Date.now() };
