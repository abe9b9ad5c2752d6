// The turns of the watch that no message starts: ticks, people's acts on alarms, changes of chambers and batches. Each decides on the
// state that the turn before has committed.
import { SERVICE_ID } from '../../shared/alarms/alarm.ts';
import type { WatchEvent } from '../../shared/alarms/watch-state.ts';
import { sayWhyNothing } from '../../shared/alarms/why-nothing.ts';
import { Problem } from '../../shared/problem.ts';
import type { Clock } from '../clock.ts';
import type { Announce, Happenings } from '../happenings.ts';
import type { Store } from '../store/store.ts';
import type { Decision } from './decision.ts';
import type { Turnstile } from './turnstile.ts';
import type { Unstored } from './unstored.ts';
import type { Watch } from './watch.ts';

export interface Rounds {
  /** Looks at the service itself, then judges every chamber by the time that has passed. */
  tick(sinceLastMs: number): Promise<void>;
  /** A person's act on an alarm. Problems: `not-found`, `conflict` with the reason when it changes nothing. */
  act(chamberId: string, event: Exclude<WatchEvent, { type: 'observe' }>): Promise<void>;
  /** Runs a change to the store, reads the chambers anew, judges them, and tells. */
  change<T>(chamberIds: readonly string[], task: () => Promise<T>, happenings: (result: T) => Happenings): Promise<T>;
}

interface RoundParts {
  readonly store: Store;
  readonly watch: Watch;
  readonly turnstile: Turnstile;
  readonly clock: Clock;
  readonly announce: Announce;
  /** What the service asks of itself. */
  readonly self: { turn(sinceLastMs: number): Promise<void>; readonly unstored: Unstored };
}

export function createRounds({ store, watch, turnstile, clock, announce, self }: RoundParts): Rounds {
  const settle = async (decision: Decision, more: Happenings = {}) => {
    const { changes, entries, notices } = decision.work;
    if (changes.length + entries.length + notices.length > 0) {
      // What is newer must not be written before what waits.
      await store.commit(self.unstored.withWaiting([decision.work]));
      self.unstored.stored();
    }
    decision.apply();
    await announce({ ...more, alarms: changes, noticesWritten: notices.length > 0 });
  };
  const judge = (chamberIds: readonly string[]) => watch.observe(chamberIds, watch.probes.all(), clock.nowMs());
  return {
    tick: (sinceLastMs) =>
      turnstile.inTurn(async () => {
        await self.turn(sinceLastMs);
        await watch.refreshHouse(clock.nowMs());
        const chamberIds = watch.chambers().map(({ chamber }) => chamber.id);
        await settle(judge(chamberIds), { chamberIds });
      }),
    act: (chamberId, event) =>
      turnstile.inTurn(async () => {
        const isChamber = chamberId !== SERVICE_ID;
        if (isChamber && watch.chamber(chamberId) === undefined)
          throw new Problem('not-found', ({ problems }) => problems.alarmChamberGone);
        const decision = watch.act(chamberId, event);
        const { reason } = decision;
        if (reason !== null) throw new Problem('conflict', (words) => sayWhyNothing(reason, words));
        // A rule out of service may have had no alarm to tell of it: every open page is to ask for the chamber anew.
        const batches = isChamber && isAboutService(event) ? [{ chamberId, batchId: null }] : [];
        await settle(decision, { chamberIds: isChamber ? [chamberId] : [], batches });
      }),
    change: (chamberIds, task, happenings) =>
      turnstile.inTurn(async () => {
        const result = await task();
        for (const id of chamberIds) await watch.reload(id);
        await settle(judge(chamberIds), { chamberIds, ...happenings(result) });
        return result;
      }),
  };
}

function isAboutService({ type }: WatchEvent): boolean {
  return type === 'take-out-of-service' || type === 'return-to-service';
}
