// The way in for readings, put together: the intake, in turn with everything else that decides, and what it has counted.
import type { Logger } from 'pino';
import type { Books } from './books.ts';
import type { Clock } from './clock.ts';
import type { Announce } from './happenings.ts';
import type { Tally } from './health.ts';
import { admitReadings } from './ingest/admit-readings.ts';
import type { ArrivedMessage } from './ingest/arrived-message.ts';
import { createIntake, type Intake } from './ingest/intake.ts';
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
    refuse: (message, reason) => refuseMessage(store, message, reason),
    log,
  });
  return { intake, tally };
}

async function refuseMessage(store: Store, message: ArrivedMessage, reason: string): Promise<void> {
  const { arrivalMs, topic, payload } = message;
  const payloadStart = payload.subarray(0, 500);
  await store.commit({ refused: [{ atMs: arrivalMs, topic, reason, where: '', payloadStart }] });
}
