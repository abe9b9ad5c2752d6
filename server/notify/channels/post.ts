// One POST over http or https: no redirect is followed, nothing is sent to a local address unless allowed, and the whole exchange has a time limit.
// The body of the answer is never read: a person chose the address, and what stands behind it is not for them to see.
import http, { type IncomingHttpHeaders, type RequestOptions } from 'node:http';
import https from 'node:https';
import { type Finding, finding } from '../../../shared/finding.ts';
import { judgePostFailure } from './judge-post-failure.ts';
import { LocalAddressError, lookUpForeign, namesLocalAddress } from './local-address.ts';

interface PostRequest {
  readonly url: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Buffer;
  readonly timeoutMs: number;
  readonly allowLocal: boolean;
  readonly signal: AbortSignal | undefined;
}

export type PostOutcome =
  | { readonly kind: 'answered'; readonly status: number; readonly headers: IncomingHttpHeaders }
  /** It was not sent and never will be: the address is not one to send to. */
  | { readonly kind: 'refused'; readonly reason: Finding }
  /** No answer. */
  | { readonly kind: 'failed'; readonly reason: Finding };

export const SEND_TIMEOUT_MS = 10_000;

/** Sends and waits for the status line. What a network may do is an outcome; it rejects only for a request that cannot be written. */
export async function post(request: PostRequest): Promise<PostOutcome> {
  const url = URL.canParse(request.url) ? new URL(request.url) : null;
  if (url === null || !/^https?:$/.test(url.protocol)) return { kind: 'refused', reason: finding('notWebAddress') };
  if (!request.allowLocal && namesLocalAddress(url)) return refusedLocal(url);
  try {
    return await exchange(url, request);
  } catch (error) {
    if (error instanceof LocalAddressError) return refusedLocal(url);
    return { kind: 'failed', reason: judgePostFailure(error, url.host, request.timeoutMs) };
  }
}

function exchange(url: URL, request: PostRequest): Promise<PostOutcome> {
  return new Promise((resolve, reject) => {
    const sending = (url.protocol === 'https:' ? https : http).request(url, optionsOf(request), (response) => {
      // A body that breaks off after the status changes nothing; the time limit ends one that never does.
      response.on('error', () => response.destroy()).resume();
      resolve({ kind: 'answered', status: response.statusCode ?? 0, headers: response.headers });
    });
    sending.on('error', reject).end(request.body);
  });
}

function optionsOf({ headers, timeoutMs, allowLocal, signal }: PostRequest): RequestOptions {
  const limit = AbortSignal.timeout(timeoutMs);
  return {
    method: 'POST',
    headers: { ...headers },
    // A connection of its own: one that was opened under a laxer rule must not be used again under a stricter one.
    agent: false,
    signal: signal === undefined ? limit : AbortSignal.any([limit, signal]),
    ...(allowLocal ? {} : { lookup: lookUpForeign }),
  };
}

function refusedLocal(url: URL): PostOutcome {
  return { kind: 'refused', reason: finding('localAddress', url.hostname) };
}
