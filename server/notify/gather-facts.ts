// Reads what a message says of an alarm: its present state, chamber, batch and probe by their names, where it is heading, who else knows.
import { type Alarm, type Priority, SERVICE_ID, SERVICE_NAME } from '../../shared/alarms/alarm.ts';
import type { Notice } from '../store/store.ts';
import type { DeliveryParts } from './delivery-parts.ts';
import type { FloodFacts } from './flood-message.ts';
import { gatherTrend } from './gather-trend.ts';
import type { NoticeFacts } from './notice-message.ts';

type Store = DeliveryParts['store'];

/** null when the alarm is not in the store. A chamber, batch or probe that was removed does not keep an alarm from being told. */
export async function gatherFacts(notice: Notice, store: Store, nowMs: number): Promise<NoticeFacts | null> {
  const alarm = await store.alarms.get(notice.alarmId);
  if (alarm === null) return null;
  const [chamber, batch, probe, told, alsoHere, trend] = await Promise.all([
    store.chambers.get(notice.chamberId),
    alarm.batchId === null ? null : store.batches.get(alarm.batchId),
    alarm.probeId === null ? null : store.probes.get(alarm.probeId),
    gatherTold(notice, alarm, store),
    gatherAlsoHere(alarm, store),
    gatherTrend(alarm, store, nowMs),
  ]);
  const flood = notice.kind === 'flood' ? await gatherFlood(store) : null;
  return {
    ...(flood !== null && { flood }),
    ...{ alarm, told, alsoHere, trend },
    chamber: { id: notice.chamberId, name: notice.chamberId === SERVICE_ID ? SERVICE_NAME : (chamber?.name ?? null) },
    batch: batch === null ? null : { id: batch.id, code: batch.code },
    probeName: probe?.name ?? alarm.probeId,
  };
}

const priorities: readonly Priority[] = ['critical', 'high', 'medium', 'low'];

/** What else stands in the chamber and waits for somebody. */
async function gatherAlsoHere({ id, chamberId, state }: Alarm, { alarms }: Store): Promise<Alarm[]> {
  if (state !== 'unacknowledged') return [];
  return (await alarms.unacknowledgedIn(chamberId))
    .filter((one) => one.id !== id && one.level > 0)
    .sort((a, b) => priorities.indexOf(a.priority) - priorities.indexOf(b.priority));
}

/** Names of the others who are told of an alarm that waits for somebody. */
async function gatherTold(notice: Notice, alarm: Alarm, { notices, people }: Store): Promise<string[]> {
  if (alarm.state !== 'unacknowledged') return [];
  const ofAlarm = await notices.ofAlarm(alarm.id);
  const ids = new Set(ofAlarm.filter(({ state }) => state !== 'given-up').map(({ personId }) => personId));
  if (ids.size < 2) return [];
  const others = (await people.list()).filter(({ id }) => ids.has(id) && id !== notice.personId);
  return others.map(({ name }) => name);
}

async function gatherFlood(store: Store): Promise<FloodFacts> {
  const active = (await store.alarms.page({ limit: 500, state: 'active' })).items.filter(({ level }) => level > 0);
  const ids = new Set(active.map(({ chamberId }) => chamberId));
  return {
    standing: active.length,
    critical: active.filter(({ priority }) => priority === 'critical').length,
    chambers: (await store.chambers.list()).filter(({ id }) => ids.has(id)).map(({ name }) => name),
  };
}
