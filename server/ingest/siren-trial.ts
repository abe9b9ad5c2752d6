// Tries the siren: its topic says `on` for a few seconds and then again what the alarms say. An alarm that comes meanwhile wins. What the broker
// acknowledged is all that can be known here; whether anything sounded, only somebody beside it can say.
import { SECOND_MS } from '../../shared/units.ts';
import type { Clock } from '../clock.ts';
import { type BrokerVoice, type Held, SIREN_REASON_TOPIC, SIREN_TOPIC } from './broker.ts';

/** Ours: long enough to be heard from the office, short enough not to frighten. */
export const SIREN_TRIAL_MS = 5 * SECOND_MS;

export type SirenOutcome =
  | { readonly kind: 'not-sounded'; readonly why: 'switched-off' | 'in-alarm' | 'broker'; readonly atMs: number }
  | {
      readonly kind: 'sounded';
      /** When the broker acknowledged `on`. */
      readonly onMs: number;
      /** When it acknowledged `off`; null = it did not, or an alarm has taken over. */
      readonly offMs: number | null;
      readonly isTakenOver: boolean;
      /** Connections that it was handed to; null = an outside broker does not say. */
      readonly followers: number | null;
    };

export interface SirenTrial {
  /** Whoever asks while one runs gets its outcome. Never rejects. */
  run(): Promise<SirenOutcome>;
  isRunning(): boolean;
  /** Ends it at once; `true` = somebody else speaks on the topic from here on. Resolves when it is over. */
  end(isTakenOver: boolean): Promise<void>;
}

interface SirenTrialParts {
  readonly broker: BrokerVoice;
  readonly clock: Pick<Clock, 'nowMs'>;
  readonly lastsMs: number;
  readonly onFault: (error: unknown) => void;
}

/** What is retained beside the siren meanwhile. */
const TRIAL_REASON = JSON.stringify({ on: true, test: true, alarms: [] });

export function createSirenTrial({ broker, clock, lastsMs, onFault }: SirenTrialParts): SirenTrial {
  let running: Promise<SirenOutcome> | null = null;
  let stop: (isTakenOver: boolean) => void = () => undefined;
  const sound = async (stopped: Promise<boolean>): Promise<SirenOutcome> => {
    const held = await hold(broker).catch(onFault);
    if (held === undefined) return { kind: 'not-sounded', why: 'broker', atMs: clock.nowMs() };
    const onMs = clock.nowMs();
    const isTakenOver = await Promise.race([stopped, held.lost.then(() => false)]);
    const isLetGo = await held.letGo(isTakenOver).then(() => true, onFault);
    const offMs = isLetGo === true && !isTakenOver ? clock.nowMs() : null;
    return { kind: 'sounded', onMs, offMs, isTakenOver, followers: held.followers };
  };
  const begin = (): Promise<SirenOutcome> => {
    const stopped = new Promise<boolean>((resolve) => {
      stop = resolve;
    });
    const timer = setTimeout(() => stop(false), lastsMs);
    return sound(stopped).finally(() => {
      clearTimeout(timer);
      running = null;
    });
  };
  return {
    run() {
      running ??= begin();
      return running;
    },
    isRunning: () => running !== null,
    async end(isTakenOver) {
      stop(isTakenOver);
      await running;
    },
  };
}

async function hold(broker: BrokerVoice): Promise<Held> {
  if (broker.trouble() !== null) throw new Error('the broker is not reached');
  await broker.publish(SIREN_REASON_TOPIC, TRIAL_REASON);
  return broker.hold({ topic: SIREN_TOPIC, payload: 'on', afterwards: 'off' });
}
