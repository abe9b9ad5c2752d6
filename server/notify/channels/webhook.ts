// The site's webhook: a JSON POST that any program can take. `takewell-notice` repeats with the same value when a notice is sent twice;
// `takewell-signature` lets the receiver see that the body is ours.
import { createHmac } from 'node:crypto';
import { writeWebhookBody } from '../webhook-body.ts';
import type { Channel, SendResult } from './channel.ts';
import { type PostOutcome, post, SEND_TIMEOUT_MS } from './post.ts';
import { mayPass, readRetryAfter } from './read-retry-after.ts';

export interface WebhookTarget {
  readonly url: string;
  readonly secret?: string | undefined;
  /** Lets the address be on this machine or link-local. */
  readonly allowLocal: boolean;
}

interface WebhookOptions {
  readonly timeoutMs?: number;
}

/** The channel to the site's webhook. Any 2xx status means that the receiver has it. */
export function createWebhook({ timeoutMs = SEND_TIMEOUT_MS }: WebhookOptions = {}): Channel<WebhookTarget> {
  return {
    async send(message, { url, secret, allowLocal }, signal) {
      const body = Buffer.from(writeWebhookBody(message));
      const headers = {
        'content-type': 'application/json',
        'user-agent': 'takewell',
        'takewell-notice': message.noticeId,
        ...(secret === undefined || secret === '' ? {} : { 'takewell-signature': sign(body, secret) }),
      };
      return judge(await post({ url, headers, body, timeoutMs, allowLocal, signal }));
    },
  };
}

/** `sha256=` and the HMAC-SHA-256 (RFC 2104) of the body's bytes, in hex. */
function sign(body: Buffer, secret: string): string {
  return `sha256=${createHmac('sha256', secret).update(body).digest('hex')}`;
}

function judge(outcome: PostOutcome): SendResult {
  if (outcome.kind === 'refused') return { delivered: false, retryable: false, reason: outcome.reason };
  if (outcome.kind === 'failed')
    return { delivered: false, retryable: true, serviceDown: true, reason: outcome.reason };
  const { status, headers } = outcome;
  if (status >= 200 && status < 300) return { delivered: true, detail: `accepted by the webhook (${status})` };
  const retryAfterMs = readRetryAfter(headers);
  return {
    delivered: false,
    retryable: mayPass(status),
    reason: sayStatus(status),
    serviceDown: status >= 500,
    ...(retryAfterMs === undefined ? {} : { retryAfterMs }),
  };
}

function sayStatus(status: number): string {
  if (status >= 300 && status < 400)
    return `the webhook points elsewhere (${status}): enter the final address, redirects are not followed`;
  if (status === 429) return `the webhook asks to wait (${status})`;
  if (mayPass(status)) return `the webhook is in trouble (${status})`;
  return `the webhook refuses the notice (${status}): check its address and what it expects`;
}
