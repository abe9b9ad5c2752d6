// Reads what a message says of an alarm: its present state, chamber, batch and probe by their names.
import type { Notice } from '../store/store.ts';
import type { DeliveryParts } from './delivery-parts.ts';
import type { FloodFacts } from './flood-message.ts';
import type { NoticeFacts } from './notice-message.ts';

/** null when the alarm is not in the store. A chamber, batch or probe that was removed does not keep an alarm from being told. */
export async function gatherFacts(notice: Notice, store: DeliveryParts['store']): Promise<NoticeFacts | null> {
  const alarm = await store.alarms.get(notice.alarmId);
  if (alarm === null) return null;
  const [chambers, batch, probes] = await Promise.all([
    store.chambers.listWithRetired(),
    alarm.batchId === null ? null : store.batches.get(alarm.batchId),
    alarm.probeId === null ? [] : store.probes.list(),
  ]);
  const chamber = chambers.find((one) => one.id === notice.chamberId);
  const flood = notice.kind === 'flood' ? await gatherFlood(store, chambers) : null;
  return {
    ...(flood !== null && { flood }),
    alarm,
    chamber: { id: notice.chamberId, name: chamber?.name ?? 'A removed chamber' },
    batch: batch === null ? null : { id: batch.id, code: batch.code },
    probeName: probes.find((one) => one.id === alarm.probeId)?.name ?? alarm.probeId,
  };
}

async function gatherFlood(
  store: DeliveryParts['store'],
  chambers: readonly { readonly id: string; readonly name: string }[],
): Promise<FloodFacts> {
  const active = (await store.alarms.page({ limit: 500, state: 'active' })).items.filter(({ level }) => level > 0);
  const ids = new Set(active.map(({ chamberId }) => chamberId));
  return {
    standing: active.length,
    critical: active.filter(({ priority }) => priority === 'critical').length,
    chambers: chambers.filter(({ id }) => ids.has(id)).map(({ name }) => name),
  };
}
