// The turns of the watch that no message starts: ticks, people's acts on alarms, changes of chambers and batches. Each decides on the
// state that the turn before has committed.

import type { WatchEvent } from '../../shared/alarms/watch-state.ts';
import { sayWhyNothing } from '../../shared/alarms/why-nothing.ts';
import { Problem } from '../../shared/problem.ts';
import type { Clock } from '../clock.ts';
import type { Announce, Happenings } from '../happenings.ts';
import type { Store } from '../store/store.ts';
import type { Turnstile } from './turnstile.ts';
import type { Decision, Watch } from './watch.ts';

export interface Rounds {
  /** Judges every chamber by the time that has passed. */
  tick(): Promise<void>;
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
}

export function createRounds({ store, watch, turnstile, clock, announce }: RoundParts): Rounds {
  const settle = async (decision: Decision, more: Happenings = {}) => {
    const { changes, entries, notices } = decision.work;
    if (changes.length + entries.length + notices.length > 0) await store.commit({ watch: decision.work });
    decision.apply();
    announce({ ...more, alarms: changes, noticesWritten: notices.length > 0 });
  };
  const judge = (chamberIds: readonly string[]) => watch.observe(chamberIds, watch.probes.all(), clock.nowMs());
  return {
    tick: () =>
      turnstile.inTurn(async () => {
        await watch.refreshHouse(clock.nowMs());
        const chamberIds = watch.chambers().map(({ chamber }) => chamber.id);
        await settle(judge(chamberIds), { chamberIds });
      }),
    act: (chamberId, event) =>
      turnstile.inTurn(async () => {
        if (watch.chamber(chamberId) === undefined)
          throw new Problem('not-found', ({ problems }) => problems.alarmChamberGone);
        const decision = watch.act(chamberId, event);
        const { reason } = decision;
        if (reason !== null) throw new Problem('conflict', (words) => sayWhyNothing(reason, words));
        // A rule out of service may have had no alarm to tell of it: every open page is to ask for the chamber anew.
        const batches = isAboutService(event) ? [{ chamberId, batchId: null }] : [];
        await settle(decision, { chamberIds: [chamberId], batches });
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
