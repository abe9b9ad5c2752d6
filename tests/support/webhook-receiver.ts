// A real receiver of webhook calls for tests and journeys: records each call, checks its signature, and answers as it is told.
import { createHmac, timingSafeEqual } from 'node:crypto';
import type { IncomingHttpHeaders } from 'node:http';
import type { Webhook } from '../../shared/api/channels.ts';
import { openHttpPeer, type PeerAnswer } from './http-peer.ts';

export interface ReceivedCall {
  readonly path: string;
  /** The id that repeats when a notice is sent twice. */
  readonly noticeId: string;
  /** The body as it came, and read as JSON: {} when it is none. */
  readonly text: string;
  readonly message: Record<string, unknown>;
  readonly headers: IncomingHttpHeaders;
  /** null = not signed. */
  readonly isSignatureRight: boolean | null;
  /** What it was answered. */
  readonly answer: PeerAnswer;
}

export interface WebhookReceiver {
  readonly url: string;
  /** Every call, in order, also those that were refused. */
  readonly calls: readonly ReceivedCall[];
  /** From now on answer so; at first 204. A redirect is a status with a `location` header. */
  answerWith(answer: PeerAnswer): void;
  /** Resolves when so many calls have come in all. */
  whenCalled(count: number): Promise<void>;
  close(): Promise<void>;
}

/** A webhook of the site as it is kept, to this address, on this machine if need be. */
export function webhookTo(url: string, change: Partial<Webhook> = {}): Webhook {
  const parts = { audience: 'site', contentType: 'json', template: '' } as const;
  return { ...parts, headers: [], id: 'first', name: 'Webhook', url, allowLocal: true, ...change };
}

export async function openWebhookReceiver(secret = ''): Promise<WebhookReceiver> {
  const calls: ReceivedCall[] = [];
  let answer: PeerAnswer = { status: 204 };
  const peer = await openHttpPeer(({ path, headers, body }) => {
    const signature = headers['takewell-signature'];
    calls.push({
      path,
      noticeId: String(headers['takewell-notice']),
      text: body.toString('utf8'),
      message: readJson(body.toString('utf8')),
      headers,
      isSignatureRight: typeof signature === 'string' ? isRight(signature, body, secret) : null,
      answer,
    });
    return answer;
  });
  return {
    url: `${peer.origin}/hook`,
    calls,
    answerWith(next) {
      answer = next;
    },
    whenCalled: peer.whenAsked,
    close: peer.close,
  };
}

function readJson(text: string): Record<string, unknown> {
  try {
    return JSON.parse(text);
  } catch {
    // A form is no JSON: its test looks at the text.
    return {};
  }
}

function isRight(signature: string, body: Buffer, secret: string): boolean {
  const expected = Buffer.from(`sha256=${createHmac('sha256', secret).update(body).digest('hex')}`);
  const given = Buffer.from(signature);
  return given.length === expected.length && timingSafeEqual(given, expected);
}
