// The watcher watched: puts together what the service asks of itself each round.
import type { Logger } from 'pino';
import type { Clock } from './clock.ts';
import type { Announce } from './happenings.ts';
import type { Delivery } from './notify/deliver-notices.ts';
import { createBallast } from './store/ballast.ts';
import type { Store } from './store/store.ts';
import { createClockWatch } from './watch/clock-watch.ts';
import { MOST_AHEAD_MS } from './watch/move-clock.ts';
import type { OutageBook } from './watch/outage-book.ts';
import type { ProbeState } from './watch/probe-book.ts';
import { freePercentOf, type ServiceSenses } from './watch/service-senses.ts';
import { createServiceTurn } from './watch/service-turn.ts';
import { createUnstored, type Unstored } from './watch/unstored.ts';
import type { Watch } from './watch/watch.ts';

export interface SelfWatchParts {
  readonly store: Store;
  readonly watch: Watch;
  readonly outage: OutageBook;
  readonly clock: Clock;
  readonly log: Logger;
  readonly dataDir: string;
  readonly delivery: Pick<Delivery, 'tellUnstored'>;
  readonly announce: Announce;
  readonly senses: Omit<ServiceSenses, 'freePercent'>;
}

export interface SelfWatch {
  /** One look; call it in the turnstile. */
  readonly turn: (sinceLastMs: number) => Promise<void>;
  readonly unstored: Unstored;
}

/** Make it before readings come in: a clock that went back while the service was away is told by the newest that is stored. */
export function createSelfWatch(parts: SelfWatchParts): SelfWatch {
  const { clock, outage, delivery, dataDir } = parts;
  const unstored = createUnstored({
    nowMs: () => clock.nowMs(),
    tell: (notice, alarm) => delivery.tellUnstored(notice, alarm),
  });
  const lookAtClock = createClockWatch(clock, outage.memory().aliveMs, newestStoredOf(parts.watch.probes.all()));
  const senses = { ...parts.senses, freePercent: () => freePercentOf(dataDir) };
  const turn = createServiceTurn({ ...parts, unstored, lookAtClock, senses, ballast: createBallast(dataDir) });
  return { turn, unstored };
}

/** The newest of the stored readings, less what admission lets run ahead; null = there is none. */
function newestStoredOf(probes: Iterable<ProbeState>): number | null {
  const times = [...probes].flatMap(({ newest }) => (newest === null ? [] : newest.timeMs - MOST_AHEAD_MS));
  return times.length === 0 ? null : Math.max(...times);
}
