// The way in for readings, put together: the intake, in turn with everything else that decides, and what it has counted.
import type { Logger } from 'pino';
import type { Books } from './books.ts';
import type { Clock } from './clock.ts';
import type { Announce } from './happenings.ts';
import type { Tally } from './health.ts';
import { admitReadings } from './ingest/admit-readings.ts';
import { createIntake, type Intake } from './ingest/intake.ts';
import { refusalsOf } from './ingest/refusals-of.ts';
import type { Store } from './store/store.ts';
import type { Turnstile } from './watch/turnstile.ts';

interface ReadingsInParts {
  readonly store: Store;
  readonly books: Pick<Books, 'watch' | 'site' | 'outage'>;
  readonly turnstile: Turnstile;
  readonly clock: Clock;
  readonly log: Logger;
  readonly announce: Announce;
}

export interface ReadingsIn {
  readonly intake: Intake;
  /** Since the start. */
  readonly tally: Tally;
}

export function createReadingsIn(parts: ReadingsInParts): ReadingsIn {
  const { store, books, turnstile, clock, log, announce } = parts;
  const { watch, site, outage } = books;
  const tally = { readings: 0, refused: 0 };
  const intake = createIntake({
    admit: (messages) =>
      turnstile.inTurn(async () => {
        const happenings = await admitReadings(messages, { store, watch, site, clock });
        tally.readings += happenings.readings;
        tally.refused += happenings.refused;
        if (happenings.hasLate) outage.noteLate(clock.nowMs());
        await announce(happenings);
      }),
    refuse: async (message, reason) => {
      await store.commit({ refused: refusalsOf(message, [{ reason, where: '' }]) });
    },
    log,
  });
  return { intake, tally };
}
