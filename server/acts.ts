// What people and the passing of time can do, each in turn with the readings.
import type { Clock } from './clock.ts';
import type { Announce } from './happenings.ts';
import type { SelfWatch } from './self-watch.ts';
import type { Site } from './site.ts';
import type { Store } from './store/store.ts';
import { type BatchActs, createBatchActs } from './watch/batch-acts.ts';
import { type CalibrationActs, createCalibrationActs } from './watch/calibration-acts.ts';
import { type ChamberActs, createChamberActs } from './watch/chamber-acts.ts';
import { createRounds, type Rounds } from './watch/rounds.ts';
import type { Turnstile } from './watch/turnstile.ts';
import type { Watch } from './watch/watch.ts';

interface ActParts {
  readonly store: Store;
  readonly watch: Watch;
  readonly site: Site;
  readonly turnstile: Turnstile;
  readonly clock: Clock;
  readonly announce: Announce;
  readonly self: SelfWatch;
}

export interface Acts {
  readonly rounds: Rounds;
  readonly chamberActs: ChamberActs;
  readonly batchActs: BatchActs;
  readonly calibrationActs: CalibrationActs;
}

export function createActs(parts: ActParts): Acts {
  const rounds = createRounds(parts);
  return {
    rounds,
    chamberActs: createChamberActs({ ...parts, rounds }),
    batchActs: createBatchActs({ ...parts, rounds }),
    calibrationActs: createCalibrationActs({ ...parts, rounds }),
  };
}
