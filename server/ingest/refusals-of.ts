// What is kept of refusals: reason and place of each, and how the message began.
import { plainEnglish } from '../../shared/plain-english.ts';
import type { Refusal } from '../../shared/readings/reading.ts';
import { sayRefusal } from '../../shared/readings/say-refusal.ts';
import type { Refused } from '../store/store.ts';
import type { ArrivedMessage } from './arrived-message.ts';

const PAYLOAD_START = 500;
/** Characters. A field may have a name as long as its message. */
const LONGEST_PLACE = 200;

/** The refusals of one message as they are stored. */
export function refusalsOf(
  message: Pick<ArrivedMessage, 'topic' | 'payload' | 'arrivalMs'>,
  refused: readonly Refusal[],
): Omit<Refused, 'id'>[] {
  if (refused.length === 0) return [];
  const { topic, arrivalMs, payload } = message;
  const payloadStart = payload.subarray(0, PAYLOAD_START);
  return refused.map(({ reason, where }) => ({
    atMs: arrivalMs,
    topic,
    reason,
    sentence: sayRefusal(reason, plainEnglish.words),
    where: where.length > LONGEST_PLACE ? `${where.slice(0, LONGEST_PLACE - 1)}…` : where,
    payloadStart,
  }));
}
