// The siren on MQTT: retained `on` or `off` for a lamp or a relay that follows it with no internet, and the reason beside it for who wants to
// show it. Whether it is to sound is decided elsewhere (`shared/telling/escalation.ts`).
import type { Logger } from 'pino';
import type { AlarmView } from '../../shared/api/alarms.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import type { BrokerVoice } from './broker.ts';
import { SIREN_REASON_TOPIC, SIREN_TOPIC } from './broker.ts';

/** Said again this often, so that a broker that lost it has it back. */
const AGAIN_AFTER_MS = MINUTE_MS;

export interface SirenTopic {
  /** The alarms that it sounds for, the worst first; none = off. */
  tell(alarms: readonly AlarmView[], nowMs: number): void;
  /** Resolves when what was told last is with the broker, or has failed. */
  settled(): Promise<void>;
}

export function createSirenTopic(broker: BrokerVoice, log: Pick<Logger, 'warn'>): SirenTopic {
  let said = '';
  let saidMs = -Infinity;
  let last: Promise<void> = Promise.resolve();
  return {
    tell(alarms, nowMs) {
      const reason = JSON.stringify({ on: alarms.length > 0, alarms: alarms.map(describe) });
      const isFresh = nowMs >= saidMs && nowMs - saidMs < AGAIN_AFTER_MS;
      if (reason === said && isFresh) return;
      [said, saidMs] = [reason, nowMs];
      last = publish(broker, alarms.length > 0, reason).catch((error: unknown) => {
        // Not said: the next round says it again.
        saidMs = -Infinity;
        log.warn({ err: error }, 'the siren was not published');
      });
    },
    settled: () => last,
  };
}

async function publish(broker: BrokerVoice, isOn: boolean, reason: string): Promise<void> {
  if (broker.trouble() !== null) throw new Error('the broker is not reached');
  await broker.publish(SIREN_REASON_TOPIC, reason);
  await broker.publish(SIREN_TOPIC, isOn ? 'on' : 'off');
}

function describe({ id, chamberName, batchCode, rule, priority, since }: AlarmView) {
  return { id, chamber: chamberName, batch: batchCode, rule, priority, since };
}
