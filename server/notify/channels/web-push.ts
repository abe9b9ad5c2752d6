// Web Push (RFC 8030): encrypted for the phone (RFC 8291), signed with the site's VAPID keys (RFC 8292). The library encrypts and signs;
// sending is ours, because it knows no time limit over all, no plain http of a private push service and no check of the address.
import { createHash } from 'node:crypto';
import webPush, { type RequestDetails } from 'web-push';
import { type Finding, finding } from '../../../shared/finding.ts';
import type { NoticeMessage } from '../notice-message.ts';
import { writePushPayload } from '../push-payload.ts';
import type { VapidKeys } from '../vapid-keys.ts';
import type { Channel, NotDelivered, SendResult } from './channel.ts';
import { type PostOutcome, post, SEND_TIMEOUT_MS } from './post.ts';
import { mayPass, readRetryAfter } from './read-retry-after.ts';
import { createVapidSignatures, type VapidSignatures } from './vapid-signatures.ts';

/** What a browser hands out when it subscribes. */
export interface PushTarget {
  readonly endpoint: string;
  readonly p256dh: string;
  readonly auth: string;
  /** The public key of ours that it subscribed with; null = the first. */
  readonly pushKey: string | null;
}

interface WebPushOptions {
  readonly vapid: VapidKeys;
  /** Lets an endpoint be on this machine or on a link-local address. */
  readonly allowLocal: boolean;
  readonly timeoutMs?: number;
  /** Default: the clock of the machine, by which the library signs. */
  readonly nowMs?: () => number;
}

/** The channel to phones. Accepted means that the push service has it, not that the phone has shown it. */
export function createWebPush(options: WebPushOptions): Channel<PushTarget> {
  const { vapid, allowLocal, timeoutMs = SEND_TIMEOUT_MS } = options;
  const signatures = createVapidSignatures(options.nowMs ?? Date.now);
  return {
    async send(message, target, signal) {
      const sendSealed = async (limitBytes?: number): Promise<PostOutcome | NotDelivered> => {
        const sealed = seal(message, target, { vapid, signatures }, limitBytes);
        if ('fault' in sealed) return refused(sealed.fault, 'message');
        return post({ url: target.endpoint, ...sealed, timeoutMs, allowLocal, signal });
      };
      const outcome = await sendSealed();
      // A push service may take less than 4,096 bytes (RFC 8030 §7.2): then the title has to do.
      const isTooLarge = 'kind' in outcome && outcome.kind === 'answered' && outcome.status === 413;
      const last = isTooLarge ? await sendSealed(SMALL_BYTES) : outcome;
      const result = 'kind' in last ? judge(last, target) : last;
      if (!result.delivered && result.refusal === 'signature') signatures.forget();
      return result;
    },
  };
}

const SMALL_BYTES = 900;

type Sealed = { readonly headers: Record<string, string>; readonly body: Buffer } | { readonly fault: Finding };

interface Sealing {
  readonly vapid: VapidKeys;
  readonly signatures: VapidSignatures;
}

function seal(message: NoticeMessage, target: PushTarget, { vapid, signatures }: Sealing, limitBytes?: number): Sealed {
  const { endpoint, p256dh, auth, pushKey } = target;
  if (!URL.canParse(endpoint)) return { fault: finding('phoneAddress') };
  const pair = vapid.pairOf(pushKey);
  if (pair === null) return { fault: finding('phoneKeyGone') };
  try {
    const { headers, body } = webPush.generateRequestDetails(
      { endpoint, keys: { p256dh, auth } },
      writePushPayload(message, vapid.receiptOf(message.noticeId), limitBytes),
      {
        headers: { Authorization: signatures.headerFor(new URL(endpoint), pair, vapid.subject()) },
        TTL: message.ttlSeconds,
        urgency: message.urgent ? 'high' : 'normal',
        topic: topicOf(message.tag),
      },
    );
    return { headers: asText(headers), body: body ?? Buffer.alloc(0) };
  } catch (error) {
    // Keys come from a browser, or from somebody in its name: the library says which of them is unfit.
    return { fault: finding('phoneSeal', error instanceof Error ? error.message : 'unknown') };
  }
}

/** The library writes numbers into some headers, whatever its types say. */
function asText(headers: RequestDetails['headers']): Record<string, string> {
  return Object.fromEntries(Object.entries(headers).map(([name, value]) => [name, String(value)]));
}

/** RFC 8030 §5.4: a later message of the same topic replaces one that is not delivered yet. 32 characters, base64url. */
export function topicOf(tag: string): string {
  return createHash('sha256').update(tag).digest('base64url').slice(0, 32);
}

function judge(outcome: PostOutcome, { endpoint }: PushTarget): SendResult {
  if (outcome.kind === 'refused') return notDelivered(outcome.reason);
  if (outcome.kind === 'failed')
    return { delivered: false, retryable: true, serviceDown: true, reason: outcome.reason };
  const { status, headers } = outcome;
  if (status >= 200 && status < 300)
    return { delivered: true, detail: finding('pushTaken', new URL(endpoint).host, status) };
  if (status === 404 || status === 410) return { ...notDelivered(finding('phoneTakesNoMore', status)), gone: true };
  if (mayPass(status)) return comeAgain(status, readRetryAfter(headers));
  return refusedBy(status);
}

function comeAgain(status: number, retryAfterMs: number | undefined): SendResult {
  return {
    delivered: false,
    retryable: true,
    reason: finding(status === 429 ? 'pushAsksToWait' : 'pushInTrouble', status),
    serviceDown: status >= 500,
    ...(retryAfterMs === undefined ? {} : { retryAfterMs }),
  };
}

function refusedBy(status: number): SendResult {
  if (status === 413) return notDelivered(finding('pushTooLarge', status));
  // A clock that is still wrong after start makes the signature invalid; it gets right by itself.
  if (status === 401 || status === 403) return refused(finding('pushSignature', status), 'signature');
  return refused(finding('pushRefused', status), 'message');
}

/** To be tried again all the same: a phone is dropped only when it is refused several times in a row. */
function refused(reason: Finding, refusal: 'message' | 'signature'): NotDelivered {
  return { delivered: false, retryable: true, reason, refusal };
}

function notDelivered(reason: Finding): NotDelivered {
  return { delivered: false, retryable: false, reason };
}
