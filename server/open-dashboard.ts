// The HTTP side, given what it needs of the rest: who signs in, how the service is, how records are written, how people are told.
import type { Logger } from 'pino';
import { utcText } from '../shared/units.ts';
import type { AcknowledgeLinks } from './acknowledge-links.ts';
import type { Acts } from './acts.ts';
import type { Alerting } from './alerting.ts';
import type { Books } from './books.ts';
import { brokerAddress } from './broker-address.ts';
import type { Clock } from './clock.ts';
import { checkHealth, describeMetrics, type HealthParts } from './health.ts';
import type { Telling } from './http/http-parts.ts';
import { type HttpServer, openHttpServer } from './http/http-server.ts';
import type { RecordWriters } from './http/routes/records.ts';
import type { StreamHub } from './http/stream.ts';
import type { Broker } from './ingest/broker.ts';
import { createSignIn } from './people/sign-in.ts';
import type { ReachBook } from './reach-book.ts';
import { gatherRecord } from './record/gather-record.ts';
import { recordCsv } from './record/record-csv.ts';
import { recordJson } from './record/record-json.ts';
import type { Settings } from './settings.ts';
import type { Site } from './site.ts';
import type { Store } from './store/store.ts';
import type { Trials } from './trials.ts';
import { version } from './version.ts';

interface DashboardParts {
  readonly settings: Settings;
  readonly store: Store;
  readonly books: Books;
  readonly acts: Acts;
  readonly hub: StreamHub;
  readonly clock: Clock;
  readonly log: Logger;
  readonly links: AcknowledgeLinks;
  readonly reach: ReachBook;
  readonly alerting: Alerting;
  readonly trials: Trials;
  readonly broker: Broker;
  readonly healthParts: HealthParts;
  /** With it the first manager is made. */
  readonly setupCode: string;
  readonly isDemo: boolean;
  /** Called after the mappings changed. */
  readonly followMappings: () => Promise<void>;
}

export function openDashboard(parts: DashboardParts): Promise<HttpServer> {
  const { settings, store, clock, healthParts, hub, links, reach, trials, isDemo, followMappings } = parts;
  const { watch, site, duty } = parts.books;
  const isSecure = settings.publicUrl?.startsWith('https:') ?? settings.http.tls !== null;
  return openHttpServer(
    settings,
    {
      ...{ store, watch, site, hub, clock, isSecure, version, duty, reach, links, trials, isDemo, followMappings },
      ...parts.acts,
      signIn: createSignIn({ store, clock, setupCode: parts.setupCode }),
      health: (words) => checkHealth(healthParts, words),
      metrics: () => describeMetrics(healthParts),
      broker: brokerAddress(settings.mqtt, parts.broker.port),
      telling: tellingOf(parts),
    },
    recordWriters(store, site, clock),
    parts.log,
  );
}

/** Each act that may change whom alerts reach is told to the open pages. */
function tellingOf({ books: { targets, duty }, alerting, settings, hub, clock }: DashboardParts): Telling {
  const thenHint = async <T>(done: Promise<T>): Promise<T> => {
    const result = await done;
    hub.publish({ event: 'reach', at: utcText(clock.nowMs()) });
    return result;
  };
  const refresh = async () => {
    await targets.refresh();
    await duty.refresh();
  };
  return {
    pushKey: alerting.pushKey,
    publicUrl: settings.publicUrl,
    channels: targets.channels,
    changeChannels: (channels) => thenHint(targets.changeChannels(channels)),
    targetsChanged: () => thenHint(refresh()),
    test: (target) => thenHint(alerting.delivery.sendTest(target)),
    confirm: (noticeId, secret) => thenHint(alerting.confirm(noticeId, secret)),
  };
}

function recordWriters(store: Store, site: Site, clock: Clock): RecordWriters {
  const gather = async (batchId: string) => {
    const { siteName, zone, altitudeM } = site.current();
    return gatherRecord(store, batchId, { siteName, zone, altitudeM, nowMs: clock.nowMs(), version });
  };
  return {
    json: async function* (batchId) {
      yield* recordJson(store, await gather(batchId));
    },
    csv: async function* (batchId) {
      yield* recordCsv(store, await gather(batchId));
    },
  };
}
