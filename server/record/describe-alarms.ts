// The alarms of a batch with every step of their life: who knew when, and who took it.
import type { RecordAlarm } from '../../shared/api/record.ts';
import { utcText } from '../../shared/units.ts';
import type { AlarmEvent, Store } from '../store/store.ts';

/** In order of their occurrence. `labelOf` names a probe by its id. */
export async function describeAlarms(
  store: Pick<Store, 'alarms'>,
  batchId: string,
  labelOf: (probeId: string) => string,
): Promise<RecordAlarm[]> {
  const alarms = await store.alarms.ofBatch(batchId);
  return Promise.all(
    alarms.map(async (alarm) => ({
      id: alarm.id,
      rule: alarm.rule,
      probe: alarm.probeId === null ? null : labelOf(alarm.probeId),
      priority: alarm.priority,
      state: alarm.state,
      since: utcText(alarm.sinceMs),
      occurredAt: utcText(alarm.occurredMs),
      limit: alarm.limit,
      peak: alarm.peak,
      peakAt: utcTextOrNull(alarm.peakMs),
      acknowledgedAt: utcTextOrNull(alarm.acknowledgedMs),
      acknowledgedBy: alarm.acknowledgedBy,
      returnedAt: utcTextOrNull(alarm.returnedMs),
      events: (await store.alarms.events(alarm.id)).map(describeEvent),
    })),
  );
}

function describeEvent({
  atMs,
  change,
  fromState,
  toState,
  priority,
  limit,
  value,
  person,
  note,
}: AlarmEvent): RecordAlarm['events'][number] {
  return { at: utcText(atMs), change, from: fromState, to: toState, priority, limit, value, person, note };
}

/** RFC 3339 UTC, or null where there is no instant. */
export function utcTextOrNull(ms: number | null): string | null {
  return ms === null ? null : utcText(ms);
}
