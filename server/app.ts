// All wiring: the parts are opened in order, joined by readable calls, and closed in reverse. The process (signals, exit, stdout) is main.ts's.
import type { Logger } from 'pino';
import { SECOND_MS } from '../shared/units.ts';
import { createAcknowledgeLinks } from './acknowledge-links.ts';
import { type Acts, createActs } from './acts.ts';
import { addStandardProfiles } from './add-standard-profiles.ts';
import { openAlerting } from './alerting.ts';
import { openBooks } from './books.ts';
import { createBrokerDoor } from './broker-door.ts';
import type { Clock } from './clock.ts';
import { createAnnounce } from './create-announce.ts';
import type { Intake } from './ingest/intake.ts';
import { openBroker } from './ingest/open-broker.ts';
import { SIREN_TRIAL_MS } from './ingest/siren-trial.ts';
import { createLiveOutlets } from './live-outlets.ts';
import { createHeartbeat } from './notify/heartbeat.ts';
import { openDashboard } from './open-dashboard.ts';
import { makeSecret } from './people/secrets.ts';
import { createReachBook } from './reach-book.ts';
import { createReadingsIn } from './readings-in.ts';
import { createSelfWatch } from './self-watch.ts';
import { databaseFile, type Settings } from './settings.ts';
import { createSirenRequests } from './siren-requests.ts';
import { lockData } from './store/data-lock.ts';
import type { DatabaseOptions } from './store/open-database.ts';
import { openStore } from './store/open-store.ts';
import type { Store } from './store/store.ts';
import { storeTrouble } from './store/store-problem.ts';
import { createTrials } from './trials.ts';
import { version } from './version.ts';
import { startRounds } from './watch/start-rounds.ts';
import { createTurnstile } from './watch/turnstile.ts';

export interface AppOptions {
  readonly settings: Settings;
  readonly clock: Clock;
  readonly log: Logger;
  readonly isDemo?: boolean;
  /** Time between rounds of the watch, ms; 0 = only when `tick` is called. */
  readonly roundMs?: number;
  /** Push services on this machine are allowed: for a private push service, and for tests. */
  readonly allowLocalPush?: boolean;
  /** How long a test of the siren sounds, ms. */
  readonly sirenTrialMs?: number;
  /** Bounds the database file, to try what happens when there is no room. */
  readonly store?: Pick<DatabaseOptions, 'maxPages'>;
}

export interface App {
  readonly url: string;
  readonly mqttPort: number | null;
  readonly store: Store;
  readonly intake: Intake;
  /** Where the first manager is made; null when there is one. */
  readonly setupUrl: string | null;
  readonly parts: Acts;
  /** One round of the watch. */
  tick(): Promise<void>;
  /** Resolves when all notices that are due have been tried. */
  deliver(): Promise<void>;
  close(): Promise<void>;
}

const ROUND_MS = 5 * SECOND_MS;

/** Opens the whole service. Throws a Problem when it cannot start; what was opened by then is closed again. */
export async function openApp(options: AppOptions): Promise<App> {
  const { settings, clock, log } = options;
  const closers: (() => Promise<void>)[] = [];
  const closeAll = async () => {
    for (const close of closers.splice(0).reverse()) await close();
  };
  try {
    const store = openStore({ ...options.store, file: databaseFile(settings.dataDir), nowMs: clock.nowMs() });
    closers.push(() => store.close());
    const unlock = lockData(settings.dataDir);
    closers.push(async () => unlock());
    return await openOn(store, options, closers, closeAll);
  } catch (error) {
    await closeAll().catch((failure: unknown) =>
      log.error({ err: failure }, 'closing after a failed start failed too'),
    );
    throw error;
  }
}

async function openOn(
  store: Store,
  options: AppOptions,
  closers: (() => Promise<void>)[],
  closeAll: () => Promise<void>,
): Promise<App> {
  const { settings, clock, log } = options;
  const { publicUrl } = settings;
  await addStandardProfiles(store, clock.nowMs());
  const books = await openBooks(store, clock);
  const { site, targets, duty, outage, watch } = books;
  const turnstile = createTurnstile();
  const door = createBrokerDoor();
  const isSirenOn = () => targets.channels().siren.enabled;
  const siren = { isEnabled: isSirenOn, trialMs: options.sirenTrialMs ?? SIREN_TRIAL_MS };
  const outlets = createLiveOutlets({ watch, clock, log, broker: door, siren });

  let address = publicUrl ?? '';
  const links = createAcknowledgeLinks({ store, clock });
  const alerting = await openAlerting({
    ...{ store, site, targets, clock, log, links, publicUrl },
    address: () => address,
    allowLocalPush: options.allowLocalPush ?? false,
  });
  const { delivery } = alerting;
  closers.push(() => delivery.close());

  const announce = createAnnounce({
    ...{ watch, clock, ...outlets, isSirenOn },
    wake: () => delivery.wake(),
  });
  const { intake, tally } = createReadingsIn({ store, books, turnstile, clock, log, announce });
  const reach = createReachBook({ store, duty, clock });
  const self = createSelfWatch({
    ...{ store, watch, outage, clock, log, delivery, announce, dataDir: settings.dataDir },
    senses: {
      brokerTrouble: () => (door.isOpen() ? door.trouble() : null),
      storeTrouble: () => storeTrouble(intake.trouble()),
      reach: reach.now,
    },
  });
  // Before the first reading comes in: whether a gap is to be told first.
  await turnstile.inTurn(() => self.turn(0));
  const filters = () => site.current().mappings.map(({ filter }) => filter);
  const broker = await openBroker({ ...{ store, intake, clock, log }, settings: settings.mqtt, filters: filters() });
  door.open(broker);
  // The broker first, so that nothing more comes in; then what is in hand.
  closers.push(
    () => intake.close(),
    () => broker.close(),
    () => outlets.sirenTopic.close(),
  );

  const acts = createActs({ store, watch, site, turnstile, clock, announce, self });
  const setupCode = settings.setupCode ?? makeSecret();
  const heartbeat = createHeartbeat({ target: () => targets.channels().heartbeat, clock });
  closers.push(() => heartbeat.close());
  const trials = createTrials({ siren: outlets.sirenTopic, heartbeat, zone: () => site.current().zone, clock });
  const answerSirenRequests = createSirenRequests({ settings: store.settings, clock, trials, log });
  let lastRoundMs = clock.steadyMs();
  const http = await openDashboard({
    ...{ settings, store, books, acts, clock, log, links, reach, alerting, trials, broker, setupCode },
    hub: outlets.hub,
    healthParts: {
      ...{ store, intake, clock, version, tally, dataDir: settings.dataDir, broker },
      heartbeatTrouble: heartbeat.trouble,
      sinceRoundMs: () => clock.steadyMs() - lastRoundMs,
      standing: watch.serviceStanding,
      readers: outlets.hub.readers,
    },
    isDemo: options.isDemo ?? false,
    followMappings: () => broker.follow(filters()),
  });
  closers.push(() => http.close());
  const url = await http.listen();
  if (publicUrl === null) address = url;

  const tick = async (sinceLastMs = 0) => {
    await acts.rounds.tick(sinceLastMs);
    // Only after all of it went well: readings come in, are stored and judged, and the outbox can be read.
    await store.notices.nextDueMs();
    if (intake.trouble() === null && broker.trouble() === null) heartbeat.beat();
    lastRoundMs = clock.steadyMs();
    await answerSirenRequests();
  };
  closers.push(startRounds(tick, options.roundMs ?? ROUND_MS, { clock, log }));
  await tick();
  delivery.wake();
  const needsSetup = (await store.people.list()).length === 0;
  return {
    url,
    mqttPort: broker.port,
    store,
    intake,
    setupUrl: needsSetup ? `${address}/set-up?code=${encodeURIComponent(setupCode)}` : null,
    parts: acts,
    tick,
    deliver: () => delivery.deliverNotices(),
    close: closeAll,
  };
}
