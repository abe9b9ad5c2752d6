// The siren on MQTT: retained `on` or `off` for a lamp or a relay that follows it with no internet, and the reason beside it for who wants to
// show it. Whether it is to sound is decided elsewhere (`shared/telling/escalation.ts`).
import type { Logger } from 'pino';
import type { AlarmView } from '../../shared/api/alarms.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import type { Clock } from '../clock.ts';
import type { BrokerVoice } from './broker.ts';
import { SIREN_REASON_TOPIC, SIREN_TOPIC } from './broker.ts';
import { createSirenTrial, type SirenOutcome } from './siren-trial.ts';

/** Said again this often, so that a broker that lost it has it back. */
const AGAIN_AFTER_MS = MINUTE_MS;

export interface SirenTopic {
  /** The alarms that it sounds for, the worst first; none = off. */
  tell(alarms: readonly AlarmView[], nowMs: number): void;
  /** Sounds it for a few seconds; at once over when an alarm asks for it. Never rejects. */
  test(): Promise<SirenOutcome>;
  /** Ends a test and resolves when what was told last is with the broker, or has failed. */
  close(): Promise<void>;
}

export interface SirenTopicParts {
  readonly broker: BrokerVoice;
  readonly clock: Pick<Clock, 'nowMs'>;
  readonly isEnabled: () => boolean;
  /** How long a test sounds. */
  readonly trialMs: number;
  readonly log: Pick<Logger, 'warn'>;
}

export function createSirenTopic({ broker, clock, isEnabled, trialMs, log }: SirenTopicParts): SirenTopic {
  let wanted: readonly AlarmView[] = [];
  let said = '';
  let saidMs = -Infinity;
  let last: Promise<void> = Promise.resolve();
  const onFault = (err: unknown) => log.warn({ err }, 'the siren was not published');
  const trial = createSirenTrial({ broker, clock, lastsMs: trialMs, onFault });
  const say = (nowMs: number) => {
    const isOn = wanted.length > 0;
    const reason = JSON.stringify({ on: isOn, alarms: wanted.map(describe) });
    const isFresh = nowMs >= saidMs && nowMs - saidMs < AGAIN_AFTER_MS;
    if (reason === said && isFresh) return;
    [said, saidMs] = [reason, nowMs];
    last = publish(broker, isOn, reason).catch((error: unknown) => {
      // Not said: the next round says it again.
      saidMs = -Infinity;
      onFault(error);
    });
  };
  return {
    tell(alarms, nowMs) {
      wanted = alarms;
      // What a test says is taken back by the test, unless an alarm needs the siren now.
      if (!trial.isRunning()) say(nowMs);
      else if (alarms.length > 0) void trial.end(true);
    },
    async test() {
      const atMs = clock.nowMs();
      if (!isEnabled()) return { kind: 'not-sounded', why: 'switched-off', atMs };
      if (wanted.length > 0) return { kind: 'not-sounded', why: 'in-alarm', atMs };
      const outcome = await trial.run();
      saidMs = -Infinity;
      say(clock.nowMs());
      await last;
      return outcome;
    },
    async close() {
      await trial.end(false);
      await last;
    },
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
