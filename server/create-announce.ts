// Tells what has come true by one turn: the deliverer first, since an alert is worth more than a page; then the open pages and the state topic of
// each chamber.
import { type Alarm, SERVICE_ID } from '../shared/alarms/alarm.ts';
import { utcText } from '../shared/units.ts';
import type { Clock } from './clock.ts';
import type { Announce } from './happenings.ts';
import type { StreamHub } from './http/stream.ts';
import type { StateTopic } from './ingest/chamber-state-topic.ts';
import type { SirenTopic } from './ingest/siren-topic.ts';
import { viewAlarm } from './views/alarm-view.ts';
import type { Watch } from './watch/watch.ts';

interface AnnounceParts {
  readonly watch: Watch;
  readonly clock: Clock;
  readonly hub: StreamHub;
  readonly stateTopic: StateTopic;
  readonly sirenTopic: SirenTopic;
  readonly isSirenOn: () => boolean;
  /** Called when notices were written. */
  readonly wake: () => void;
}

export function createAnnounce({
  watch,
  clock,
  hub,
  stateTopic,
  sirenTopic,
  isSirenOn,
  wake,
}: AnnounceParts): Announce {
  const view = (alarm: Alarm, nowMs: number) =>
    viewAlarm(alarm, watch, nowMs, watch.chamber(alarm.chamberId)?.healing?.batch.code ?? null);
  return async ({ chamberIds = [], probeIds = [], batches = [], alarms = [], noticesWritten }) => {
    if (noticesWritten) {
      wake();
      await untilAlertsLeft();
    }
    const nowMs = clock.nowMs();
    const at = utcText(nowMs);
    for (const { alarm } of alarms) hub.publish({ event: 'alarm', at, alarm: view(alarm, nowMs) });
    for (const batch of batches) hub.publish({ event: 'batch', at, ...batch });
    hub.probesChanged(probeIds);
    hub.climateChanged(chamberIds);
    const changed = [...alarms.map(({ alarm }) => alarm), ...batches].map(({ chamberId }) => chamberId);
    stateTopic.tell(
      changed.filter((id) => id !== SERVICE_ID),
      nowMs,
      true,
    );
    stateTopic.tell(chamberIds, nowMs, false);
    const sounding = isSirenOn() ? watch.sirenFor() : [];
    sirenTopic.tell(
      sounding.map((alarm) => view(alarm, nowMs)),
      nowMs,
    );
  };
}

/** One turn of the event loop: by then every message has been put together and its connection is being opened. */
function untilAlertsLeft(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}
