// All wiring: the parts are opened in order, joined by readable calls, and closed in reverse. The process (signals, exit, stdout) is main.ts's.
import type { Logger } from 'pino';
import { SECOND_MS, utcText } from '../shared/units.ts';
import { createAcknowledgeLinks } from './acknowledge-links.ts';
import { addStandardProfiles } from './add-standard-profiles.ts';
import { openAlerting } from './alerting.ts';
import { brokerAddress } from './broker-address.ts';
import type { Clock } from './clock.ts';
import { createAnnounce } from './create-announce.ts';
import { openDutyBook } from './duty-book.ts';
import type { Announce } from './happenings.ts';
import { checkHealth, describeMetrics } from './health.ts';
import { openHttpServer } from './http/http-server.ts';
import { createStreamHub } from './http/stream.ts';
import { admitReadings } from './ingest/admit-readings.ts';
import type { ArrivedMessage } from './ingest/arrived-message.ts';
import type { Broker } from './ingest/broker.ts';
import { createStateTopic } from './ingest/chamber-state-topic.ts';
import { createIntake, type Intake } from './ingest/intake.ts';
import { openBroker } from './ingest/open-broker.ts';
import { createSirenTopic } from './ingest/siren-topic.ts';
import { createHeartbeat } from './notify/heartbeat.ts';
import { makeSecret } from './people/secrets.ts';
import { createSignIn } from './people/sign-in.ts';
import { createReachBook } from './reach-book.ts';
import { gatherRecord } from './record/gather-record.ts';
import { recordCsv } from './record/record-csv.ts';
import { recordJson } from './record/record-json.ts';
import { createSelfWatch, type SelfWatch } from './self-watch.ts';
import { databaseFile, type Settings } from './settings.ts';
import { openSite, type Site } from './site.ts';
import { lockData } from './store/data-lock.ts';
import type { DatabaseOptions } from './store/open-database.ts';
import { openStore } from './store/open-store.ts';
import type { Store } from './store/store.ts';
import { openTargets } from './telling.ts';
import { version } from './version.ts';
import { viewChamber } from './views/chamber-view.ts';
import { createBatchActs } from './watch/batch-acts.ts';
import { createCalibrationActs } from './watch/calibration-acts.ts';
import { createChamberActs } from './watch/chamber-acts.ts';
import { openOutageBook } from './watch/outage-book.ts';
import { openProbeBook } from './watch/probe-book.ts';
import { createRounds } from './watch/rounds.ts';
import { startRounds } from './watch/start-rounds.ts';
import { createTurnstile, type Turnstile } from './watch/turnstile.ts';
import { openWatch, type Watch } from './watch/watch.ts';

export interface AppOptions {
  readonly settings: Settings;
  readonly clock: Clock;
  readonly log: Logger;
  readonly isDemo?: boolean;
  /** Time between rounds of the watch, ms; 0 = only when `tick` is called. */
  readonly roundMs?: number;
  /** Push services on this machine are allowed: for a private push service, and for tests. */
  readonly allowLocalPush?: boolean;
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
  readonly parts: AppParts;
  /** One round of the watch. */
  tick(): Promise<void>;
  /** Resolves when all notices that are due have been tried. */
  deliver(): Promise<void>;
  close(): Promise<void>;
}

type AppParts = ReturnType<typeof createActs>;

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
  await addStandardProfiles(store, clock.nowMs());
  const site = await openSite(store);
  const targets = await openTargets(store);
  const probes = await openProbeBook(store, clock.nowMs());
  const duty = await openDutyBook(store, site, targets.all);
  const outage = await openOutageBook(store);
  const watch = await openWatch({ store, site, probes, telling: duty, outage });
  const turnstile = createTurnstile();
  let address = settings.publicUrl ?? '';
  let broker: Broker;
  let isBrokerOpen = false;
  let lastRoundMs = clock.steadyMs();

  const chamberView = (id: string) => {
    const chamber = watch.chamber(id);
    return chamber === undefined ? undefined : viewChamber(chamber, watch, clock.nowMs());
  };
  const hub = createStreamHub(
    (chamberId) => {
      const view = chamberView(chamberId);
      const at = utcText(clock.nowMs());
      return view === undefined
        ? null
        : { event: 'climate', at, chamberId, climate: view.climate, limits: view.limits };
    },
    (probeId) => ({ event: 'probe', at: utcText(clock.nowMs()), probeId }),
    () => ({ event: 'hello', at: utcText(clock.nowMs()) }),
  );
  const stateTopic = createStateTopic(() => broker, chamberView, log);
  const sirenTopic = createSirenTopic(() => broker, log);

  const { publicUrl } = settings;
  const links = createAcknowledgeLinks({ store, clock });
  const alerting = await openAlerting({
    ...{ store, site, targets, clock, log, links, publicUrl },
    address: () => address,
    allowLocalPush: options.allowLocalPush ?? false,
  });
  const { delivery } = alerting;
  closers.push(() => delivery.close());

  const announce = createAnnounce({
    ...{ watch, clock, hub, stateTopic, sirenTopic },
    isSirenOn: () => targets.channels().siren.enabled,
    wake: () => delivery.wake(),
  });

  const tally = { readings: 0, refused: 0 };
  const intake = createIntake({
    admit: (messages) =>
      turnstile.inTurn(async () => {
        const happenings = await admitReadings(messages, { store, watch, site, clock });
        tally.readings += happenings.readings;
        tally.refused += happenings.refused;
        if (happenings.hasLate) outage.noteLate(clock.nowMs());
        announce(happenings);
      }),
    refuse: (message, reason) => refuseMessage(store, message, reason),
    log,
  });
  const reach = createReachBook({ store, duty, clock });
  const self = createSelfWatch({
    ...{ store, watch, outage, clock, log, delivery, announce, dataDir: settings.dataDir },
    senses: {
      brokerTrouble: () => (isBrokerOpen ? broker.trouble() : null),
      storeTrouble: () => intake.trouble()?.message ?? null,
      reach: reach.now,
    },
  });
  // Before the first reading comes in: whether a gap is to be told first.
  await turnstile.inTurn(() => self.turn(0));
  const filters = () => site.current().mappings.map(({ filter }) => filter);
  broker = await openBroker({ ...{ store, intake, clock, log }, settings: settings.mqtt, filters: filters() });
  isBrokerOpen = true;
  // The broker first, so that nothing more comes in; then what is in hand.
  closers.push(
    () => intake.close(),
    () => broker.close(),
  );

  const acts = createActs({ store, watch, site, turnstile, clock, announce, self });
  const setupCode = settings.setupCode ?? makeSecret();
  const heartbeat = createHeartbeat({ target: () => targets.channels().heartbeat, steadyMs: () => clock.steadyMs() });
  closers.push(() => heartbeat.close());
  const healthParts = {
    heartbeatTrouble: heartbeat.trouble,
    store,
    intake,
    broker: () => broker,
    dataDir: settings.dataDir,
    clock,
    version,
    sinceRoundMs: () => clock.steadyMs() - lastRoundMs,
    standing: watch.serviceStanding,
    readers: hub.readers,
    tally,
  };
  const isSecure = settings.publicUrl?.startsWith('https:') ?? settings.http.tls !== null;
  const writeRecord = async (batchId: string) => {
    const { siteName, zone, altitudeM } = site.current();
    return gatherRecord(store, batchId, { siteName, zone, altitudeM, nowMs: clock.nowMs(), version });
  };
  const http = await openHttpServer(
    settings,
    {
      ...{ store, watch, site, hub, clock, isSecure, version, duty, reach, links, ...acts },
      signIn: createSignIn({ store, clock, setupCode }),
      health: () => checkHealth(healthParts),
      metrics: () => describeMetrics(healthParts),
      isDemo: options.isDemo ?? false,
      broker: brokerAddress(settings.mqtt, broker.port),
      followMappings: () => broker.follow(filters()),
      telling: {
        pushKey: alerting.pushKey,
        publicUrl,
        channels: targets.channels,
        changeChannels: targets.changeChannels,
        targetsChanged: async () => {
          await targets.refresh();
          await duty.refresh();
        },
        test: delivery.sendTest,
        confirm: alerting.confirm,
      },
    },
    {
      json: async function* (batchId) {
        yield* recordJson(store, await writeRecord(batchId));
      },
      csv: async function* (batchId) {
        yield* recordCsv(store, await writeRecord(batchId));
      },
    },
    log,
  );
  closers.push(() => http.close());
  const url = await http.listen();
  if (settings.publicUrl === null) address = url;

  const tick = async (sinceLastMs = 0) => {
    await acts.rounds.tick(sinceLastMs);
    // Only after all of it went well: readings come in, are stored and judged, and the outbox can be read.
    await store.notices.nextDueMs();
    if (intake.trouble() === null && broker.trouble() === null) heartbeat.beat();
    lastRoundMs = clock.steadyMs();
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

interface ActBase {
  readonly store: Store;
  readonly watch: Watch;
  readonly site: Site;
  readonly turnstile: Turnstile;
  readonly clock: Clock;
  readonly announce: Announce;
  readonly self: SelfWatch;
}

function createActs(base: ActBase) {
  const rounds = createRounds(base);
  return {
    rounds,
    chamberActs: createChamberActs({ ...base, rounds }),
    batchActs: createBatchActs({ ...base, rounds }),
    calibrationActs: createCalibrationActs({ ...base, rounds }),
  };
}

async function refuseMessage(
  store: Store,
  { arrivalMs, topic, payload }: ArrivedMessage,
  reason: string,
): Promise<void> {
  const payloadStart = payload.subarray(0, 500);
  await store.commit({ refused: [{ atMs: arrivalMs, topic, reason, where: '', payloadStart }] });
}
