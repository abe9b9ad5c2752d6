// A test alert to one target, past the outbox, with an honest answer: taken over by whom and when, or why not. Whether it was shown is what
// the phone says later.
import { type Finding, finding } from '../../shared/finding.ts';
import type { Target } from '../../shared/telling/notice.ts';
import type { Phone } from '../store/store.ts';
import type { SendResult } from './channels/channel.ts';
import type { DeliveryParts } from './delivery-parts.ts';
import { findTarget } from './find-target.ts';
import { buildTestMessage } from './notice-message.ts';
import { makeOccasion } from './occasion.ts';
import { resultsToKeep } from './results-to-keep.ts';

export type TestTarget = Pick<Target, 'channel' | 'targetId' | 'personId'>;

export interface TestResult {
  /** The other side has it; only a person can say that they have seen it. */
  readonly delivered: boolean;
  /** By whom it was taken over, or why not. */
  readonly finding: Finding;
  readonly atMs: number;
}

/** Sends one message now. Never rejects. */
export async function sendTest(target: TestTarget, parts: DeliveryParts): Promise<TestResult> {
  const result = await trySending(target, parts);
  const { delivered } = result;
  return { delivered, finding: result.delivered ? result.detail : result.reason, atMs: parts.clock.nowMs() };
}

async function trySending(target: TestTarget, parts: DeliveryParts): Promise<SendResult> {
  try {
    const found = await findTarget(target, parts);
    if ('missing' in found) return { delivered: false, retryable: false, reason: found.missing };
    const occasion = makeOccasion(parts.clock.nowMs(), parts.publicUrl(), parts.manner(), found.person);
    const result = await found.send(buildTestMessage(occasion, target.targetId));
    await keepResults(target, found.phone, result, parts);
    return result;
  } catch (err) {
    parts.log.error({ err, target: target.targetId }, 'a test alert could not be sent');
    return { delivered: false, retryable: true, reason: finding('notSent') };
  }
}

/** Never rejects: the result is worth having even when it cannot be kept. */
async function keepResults({ targetId }: TestTarget, phone: Phone | null, result: SendResult, parts: DeliveryParts) {
  try {
    await parts.store.commit(await resultsToKeep(targetId, phone, result, parts));
  } catch (err) {
    parts.log.error({ err, target: targetId }, 'the result of a test alert could not be kept');
  }
}
