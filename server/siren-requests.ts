// How a command has the siren tried: only the running service speaks on its topic, so that no alarm is silenced by a test beside it. The command
// leaves a request in the store, the service finds it on its next round and leaves the answer.
import { setTimeout as pause } from 'node:timers/promises';
import { nanoid } from 'nanoid';
import type { Logger } from 'pino';
import { plainEnglish } from '../shared/plain-english.ts';
import { SECOND_MS } from '../shared/units.ts';
import type { Clock } from './clock.ts';
import type { Store } from './store/store.ts';
import type { TrialResult, Trials } from './trials.ts';

const REQUEST = 'sirenTestRequest';
const ANSWER = 'sirenTestAnswer';
/** An older request is not honoured: nobody waits for it any more, and a siren that sounds for no reason frightens. */
const REQUEST_LASTS_MS = 30 * SECOND_MS;
const LOOK_EVERY_MS = 200;
/** A round is five seconds. */
const FOUND_WITHIN_MS = 8 * SECOND_MS;
/** The test itself, and a broker that takes its time. */
const ANSWERED_WITHIN_MS = 25 * SECOND_MS;

type Settings = Store['settings'];

interface SirenRequest {
  readonly id: string;
  readonly askedMs: number;
}

interface RequestParts {
  readonly settings: Settings;
  readonly clock: Pick<Clock, 'nowMs'>;
  readonly trials: Pick<Trials, 'siren'>;
  readonly log: Pick<Logger, 'error'>;
}

/** For the service: call the result once a round. It returns at once; the test goes on beside the rounds. */
export function createSirenRequests({ settings, clock, trials, log }: RequestParts): () => Promise<void> {
  const onFault = (err: unknown) => log.error({ err }, 'a test of the siren could not be answered');
  const answer = async (id: string) => {
    const result = await trials.siren(plainEnglish.words);
    await settings.put(ANSWER, { id, result });
  };
  return async () => {
    const request = (await settings.get(REQUEST)) as SirenRequest | null | undefined;
    if (request == null) return;
    // Taken: whoever is killed from here on does not sound it a second time.
    await settings.put(REQUEST, null);
    const agoMs = clock.nowMs() - request.askedMs;
    if (agoMs >= -SECOND_MS && agoMs < REQUEST_LASTS_MS) void answer(request.id).catch(onFault);
  };
}

/** For a command: resolves with what the service answers; null when none does, and then the request is taken back. */
export async function requestSirenTest(settings: Settings, nowMs: number): Promise<TrialResult | null> {
  const id = nanoid(10);
  await settings.put(REQUEST, { id, askedMs: nowMs } satisfies SirenRequest);
  for (let waitedMs = 0; waitedMs < ANSWERED_WITHIN_MS; waitedMs += LOOK_EVERY_MS) {
    const answer = (await settings.get(ANSWER)) as { readonly id: string; readonly result: TrialResult } | undefined;
    if (answer?.id === id) return answer.result;
    if (waitedMs >= FOUND_WITHIN_MS && (await settings.get(REQUEST)) !== null) break;
    await pause(LOOK_EVERY_MS);
  }
  await settings.put(REQUEST, null);
  return null;
}
