// The retained state of each chamber on MQTT: enough for a siren, a lamp or a plant controller that follows it with no internet.
import type { Logger } from 'pino';
import type { ChamberView } from '../../shared/api/chambers.ts';
import { SECOND_MS } from '../../shared/units.ts';
import type { BrokerVoice } from './broker.ts';

/** Climate alone is told this often at most; a change of an alarm or of the batch at once. */
const CLIMATE_EVERY_MS = 15 * SECOND_MS;

export interface StateTopic {
  tell(chamberIds: readonly string[], nowMs: number, isUrgent: boolean): void;
}

/** `view` gives a chamber as it is now; undefined = it was removed, and its retained state is cleared. */
export function createStateTopic(
  broker: BrokerVoice,
  view: (chamberId: string) => ChamberView | undefined,
  log: Logger,
): StateTopic {
  const toldMs = new Map<string, number>();
  return {
    tell(chamberIds, nowMs, isUrgent) {
      for (const id of new Set(chamberIds)) {
        if (!isUrgent && nowMs - (toldMs.get(id) ?? 0) < CLIMATE_EVERY_MS) continue;
        toldMs.set(id, nowMs);
        const chamber = view(id);
        const payload = chamber === undefined ? '' : JSON.stringify(describeState(chamber));
        broker
          .publish(`takewell/v1/chambers/${id}/state`, payload)
          .catch((error: unknown) =>
            log.warn({ err: error, chamberId: id }, 'the state of a chamber was not published'),
          );
      }
    },
  };
}

function describeState(chamber: ChamberView) {
  const worst = chamber.alarms[0];
  return {
    chamber: chamber.name,
    batch: chamber.batch?.code ?? null,
    healingDay: chamber.batch?.healingDay ?? null,
    stage: chamber.batch?.stage ?? null,
    climate: chamber.climate,
    limits: chamber.limits,
    alarm:
      worst === undefined
        ? null
        : { rule: worst.rule, state: worst.state, priority: worst.priority, sentence: worst.sentence },
  };
}
