// Whom alerts can reach, put together from duty, targets and their last results; looked at anew at most every 30 s, for it changes slowly.
import type { ReachNow } from '../shared/alarms/service/service-scene.ts';
import { Problem } from '../shared/problem.ts';
import { type OwnReach, ownReach, reachNow, type TargetResults } from '../shared/telling/reach.ts';
import { SECOND_MS } from '../shared/units.ts';
import type { Clock } from './clock.ts';
import type { DutyBook } from './duty-book.ts';
import type { Store } from './store/store.ts';

export interface ReachBook {
  /** null = never yet looked at, because the store cannot be read. Never rejects for trouble of the store. */
  now(): Promise<ReachNow | null>;
  /** As it is at this instant; null when there is no such person. */
  ofPerson(personId: string): Promise<OwnReach | null>;
}

interface ReachParts {
  readonly store: Pick<Store, 'targetResults'>;
  readonly duty: Pick<DutyBook, 'roster'>;
  readonly clock: Clock;
}

const LOOK_EVERY_MS = 30 * SECOND_MS;

export function createReachBook({ store, duty, clock }: ReachParts): ReachBook {
  let known: ReachNow | null = null;
  let lookedMs = Number.NEGATIVE_INFINITY;
  const results = async (): Promise<TargetResults> =>
    new Map((await store.targetResults.all()).map((one) => [one.targetId, one]));
  return {
    async now() {
      if (clock.steadyMs() - lookedMs < LOOK_EVERY_MS) return known;
      try {
        known = reachNow(duty.roster(), await results(), clock.nowMs());
        lookedMs = clock.steadyMs();
      } catch (error) {
        // A store in trouble is told by its own alarm; what was known last stands until it can be read.
        if (!(error instanceof Problem)) throw error;
      }
      return known;
    },
    async ofPerson(personId) {
      const roster = duty.roster();
      const person = roster.people.find(({ id }) => id === personId);
      return person === undefined ? null : ownReach(person, roster, await results(), clock.nowMs());
    },
  };
}
