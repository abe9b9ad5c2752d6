// The heartbeat: a POST to an outside address after each full round, so that somebody else notices when this machine is silent. It carries nothing
// but that it is alive, and its failure is told in health only: an alarm about it would have to travel the same way.
import { MINUTE_MS } from '../../shared/units.ts';
import { post, SEND_TIMEOUT_MS } from './channels/post.ts';

/** Not more often; outside services expect one a minute. */
const EVERY_MS = MINUTE_MS;

interface HeartbeatParts {
  /** null = not set. */
  readonly target: () => { readonly url: string; readonly allowLocal: boolean } | null;
  readonly steadyMs: () => number;
}

export interface Heartbeat {
  /** Call after a round in which all went well. Returns at once. */
  beat(): void;
  /** Why the last one did not arrive; null = it did, or none is set. */
  trouble(): string | null;
  close(): Promise<void>;
}

export function createHeartbeat({ target, steadyMs }: HeartbeatParts): Heartbeat {
  let sentMs = Number.NEGATIVE_INFINITY;
  let trouble: string | null = null;
  let last: Promise<void> = Promise.resolve();
  const stop = new AbortController();
  const send = async (to: NonNullable<ReturnType<HeartbeatParts['target']>>) => {
    const headers = { 'user-agent': 'takewell', 'content-length': '0' };
    const request = { ...to, headers, body: Buffer.alloc(0), timeoutMs: SEND_TIMEOUT_MS, signal: stop.signal };
    const outcome = await post(request);
    if (outcome.kind !== 'answered') trouble = outcome.reason;
    else trouble = outcome.status >= 200 && outcome.status < 300 ? null : `it answers ${outcome.status}`;
  };
  return {
    beat() {
      const to = target();
      if (to === null || steadyMs() - sentMs < EVERY_MS) return;
      sentMs = steadyMs();
      last = send(to).catch((error: unknown) => {
        trouble = String(error);
      });
    },
    trouble: () => (target() === null ? null : trouble),
    async close() {
      stop.abort();
      await last;
    },
  };
}
