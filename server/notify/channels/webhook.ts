// A webhook: a POST that any program can take, in the words that its template gives. `takewell-notice` repeats with the same value when a
// notice is sent twice; `takewell-signature` lets the receiver see that the body is ours.
import { createHmac } from 'node:crypto';
import type { Webhook } from '../../../shared/api/channels.ts';
import { type Finding, finding } from '../../../shared/finding.ts';
import { fillTemplate } from '../../../shared/telling/template.ts';
import type { NoticeMessage } from '../notice-message.ts';
import { templateValues } from '../template-values.ts';
import { writeWebhookBody } from '../webhook-body.ts';
import type { Channel, SendResult } from './channel.ts';
import { type PostOutcome, post, SEND_TIMEOUT_MS } from './post.ts';
import { mayPass, readRetryAfter } from './read-retry-after.ts';

interface WebhookOptions {
  readonly timeoutMs?: number;
}

const contentTypes = { json: 'application/json', form: 'application/x-www-form-urlencoded' } as const;

/** The channel to webhooks. Any 2xx status means that the receiver has it. */
export function createWebhook({ timeoutMs = SEND_TIMEOUT_MS }: WebhookOptions = {}): Channel<Webhook> {
  return {
    async send(message, webhook, signal) {
      const { url, secret, allowLocal, contentType } = webhook;
      const body = Buffer.from(bodyOf(message, webhook));
      const headers = {
        ...Object.fromEntries(webhook.headers.map(({ name, value }) => [name.toLowerCase(), value])),
        'content-type': contentTypes[contentType],
        'user-agent': 'takewell',
        'takewell-notice': message.noticeId,
        ...(secret === undefined || secret === '' ? {} : { 'takewell-signature': sign(body, secret) }),
      };
      return judge(await post({ url, headers, body, timeoutMs, allowLocal, signal }));
    },
  };
}

function bodyOf(message: NoticeMessage, { template, contentType }: Webhook): string {
  return template === '' ? writeWebhookBody(message) : fillTemplate(template, templateValues(message), contentType);
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
  if (status >= 200 && status < 300) return { delivered: true, detail: finding('webhookTook', status) };
  const retryAfterMs = readRetryAfter(headers);
  return {
    delivered: false,
    retryable: mayPass(status),
    reason: judgeStatus(status),
    serviceDown: status >= 500,
    ...(retryAfterMs === undefined ? {} : { retryAfterMs }),
  };
}

function judgeStatus(status: number): Finding {
  if (status >= 300 && status < 400) return finding('webhookElsewhere', status);
  if (status === 429) return finding('webhookAsksToWait', status);
  return finding(mayPass(status) ? 'webhookInTrouble' : 'webhookRefuses', status);
}
