// Where what comes true is shown at once: the open pages, the state topic of each chamber, the siren topic.
import type { Logger } from 'pino';
import { utcText } from '../shared/units.ts';
import type { Clock } from './clock.ts';
import { createStreamHub, type StreamHub } from './http/stream.ts';
import type { BrokerVoice } from './ingest/broker.ts';
import { createStateTopic, type StateTopic } from './ingest/chamber-state-topic.ts';
import { createSirenTopic, type SirenTopic, type SirenTopicParts } from './ingest/siren-topic.ts';
import { viewChamber } from './views/chamber-view.ts';
import type { Watch } from './watch/watch.ts';

interface OutletParts {
  readonly watch: Watch;
  readonly clock: Clock;
  readonly log: Logger;
  readonly broker: BrokerVoice;
  readonly siren: Pick<SirenTopicParts, 'isEnabled' | 'trialMs'>;
}

export interface LiveOutlets {
  readonly hub: StreamHub;
  readonly stateTopic: StateTopic;
  readonly sirenTopic: SirenTopic;
}

export function createLiveOutlets({ watch, clock, log, broker, siren }: OutletParts): LiveOutlets {
  const at = () => utcText(clock.nowMs());
  const chamberView = (id: string) => {
    const chamber = watch.chamber(id);
    return chamber === undefined ? undefined : viewChamber(chamber, watch, clock.nowMs());
  };
  const climateOf = (chamberId: string) => {
    const view = chamberView(chamberId);
    if (view === undefined) return null;
    return { event: 'climate' as const, at: at(), chamberId, climate: view.climate, limits: view.limits };
  };
  const hub = createStreamHub(
    climateOf,
    (probeId) => ({ event: 'probe', at: at(), probeId }),
    () => ({ event: 'hello', at: at() }),
  );
  const sirenTopic = createSirenTopic({ ...siren, broker, clock, log });
  return { hub, stateTopic: createStateTopic(broker, chamberView, log), sirenTopic };
}
