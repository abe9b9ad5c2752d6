// What a way of telling must offer: take one message to one target and say honestly what became of it. A channel never throws for
// what a network may do, never retries by itself and never writes to the store.
import type { Finding } from '../../../shared/finding.ts';
import type { NoticeMessage } from '../notice-message.ts';

export type SendResult = Delivered | NotDelivered;

/** Taken over by the other side. `detail` names who and how; it is not proof that a person has seen it. */
interface Delivered {
  readonly delivered: true;
  readonly detail: Finding;
}

export interface NotDelivered {
  readonly delivered: false;
  /** True when the same message may get through later. */
  readonly retryable: boolean;
  /** What is wrong and what to do. */
  readonly reason: Finding;
  /** It was refused, and trying again will help only if somebody mends it: the message or its target, or our signature. */
  readonly refusal?: 'message' | 'signature';
  /** The target exists no more: it is to be forgotten. */
  readonly gone?: boolean;
  /** The other side asks to be left alone so long. */
  readonly retryAfterMs?: number;
  /** The whole service does not answer, so that other targets of it need not be tried now. */
  readonly serviceDown?: boolean;
}

export interface Channel<Target> {
  /** Sends once. An aborted `signal` breaks the request off; the result then means nothing. */
  send(message: NoticeMessage, target: Target, signal?: AbortSignal): Promise<SendResult>;
}
