// A real push service for tests and journeys: it hands out subscriptions as a browser does, verifies the VAPID signature of what comes
// (RFC 8292), decrypts it as the phone would (RFC 8291) and records it. It can be told to answer in any other way.
import { createECDH, type ECDH, randomBytes } from 'node:crypto';
import type { IncomingHttpHeaders } from 'node:http';
import ece from 'http_ece';
import { type HttpPeer, openHttpPeer, type PeerAnswer, type PeerRequest } from './http-peer.ts';
import { readVapid, type Vapid } from './read-vapid.ts';

/** As `PushSubscription.toJSON()` gives it. */
export interface Subscription {
  readonly endpoint: string;
  readonly keys: { readonly p256dh: string; readonly auth: string };
}

export interface ReceivedPush {
  readonly endpoint: string;
  readonly title: string;
  readonly body: string;
  readonly navigate: string;
  readonly tag: string;
  readonly data: Record<string, unknown>;
  /** The decrypted text as it came. */
  readonly text: string;
  readonly headers: IncomingHttpHeaders;
  readonly vapid: Vapid;
}

export interface PushEndpoint {
  readonly origin: string;
  /** What phones have got, in order. Pushes that were answered in another way are not in it. */
  readonly received: readonly ReceivedPush[];
  /** Why pushes were refused as invalid: empty when everything that came was sound. */
  readonly faults: readonly string[];
  /** All requests, whatever they were answered. */
  asked(): number;
  subscribe(): Subscription;
  /** From now on answer so; null = as a push service does. `only` limits it to one endpoint. */
  answerWith(answer: PeerAnswer | null, only?: string): void;
  /** Resolves when so many requests have come in all. */
  whenAsked(count: number): Promise<void>;
  close(): Promise<void>;
}

export async function openPushEndpoint(): Promise<PushEndpoint> {
  const phones = new Map<string, { readonly key: ECDH; readonly auth: string }>();
  const received: ReceivedPush[] = [];
  const faults: string[] = [];
  const special = new Map<string, PeerAnswer>();
  let asked = 0;
  const take = (request: PeerRequest): PeerAnswer => {
    asked += 1;
    const endpoint = peer.origin + request.path;
    const told = special.get(endpoint) ?? special.get('all');
    if (told !== undefined) return told;
    const phone = phones.get(endpoint);
    if (phone === undefined) return { status: 404 };
    try {
      received.push(readPush(endpoint, request, phone, peer.origin));
      return { status: 201 };
    } catch (error) {
      faults.push(String(error));
      return { status: 400 };
    }
  };
  const peer: HttpPeer = await openHttpPeer(take);
  return {
    origin: peer.origin,
    received,
    faults,
    asked: () => asked,
    subscribe() {
      const key = createECDH('prime256v1');
      const p256dh = key.generateKeys('base64url');
      const auth = randomBytes(16).toString('base64url');
      const endpoint = `${peer.origin}/push/${randomBytes(16).toString('base64url')}`;
      phones.set(endpoint, { key, auth });
      return { endpoint, keys: { p256dh, auth } };
    },
    answerWith(answer, only = 'all') {
      if (answer === null) special.delete(only);
      else special.set(only, answer);
    },
    whenAsked: peer.whenAsked,
    close: peer.close,
  };
}

function readPush(
  endpoint: string,
  { headers, body }: PeerRequest,
  phone: { readonly key: ECDH; readonly auth: string },
  audience: string,
): ReceivedPush {
  const vapid = readVapid(headers.authorization ?? '', audience);
  refuseUnsound(headers);
  const text = decryptPush(body, phone.key, phone.auth);
  const message = JSON.parse(text);
  const { title, body: words, navigate, tag, data } = message.notification;
  if (message.web_push !== 8030) throw new Error('not a declarative push message');
  return { endpoint, title, body: words, navigate, tag, data, text, headers, vapid };
}

// RFC 8030 §5.2 to §5.4 and RFC 8188 §2.
function refuseUnsound(headers: IncomingHttpHeaders): void {
  if (!/^\d+$/.test(String(headers.ttl))) throw new Error('no TTL');
  if (!/^(very-low|low|normal|high)$/.test(String(headers.urgency))) throw new Error('no valid Urgency');
  if (!/^[A-Za-z0-9_-]{1,32}$/.test(String(headers.topic))) throw new Error('no valid Topic');
  if (headers['content-encoding'] !== 'aes128gcm') throw new Error('not encrypted as aes128gcm');
}

/** The text of an encrypted push (RFC 8291), read with the phone's own key and secret. */
export function decryptPush(body: Buffer, key: ECDH, auth: string): string {
  return ece.decrypt(body, { version: 'aes128gcm', privateKey: key, authSecret: auth }).toString('utf8');
}
