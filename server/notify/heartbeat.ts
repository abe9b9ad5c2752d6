// The heartbeat: a POST to an outside address after each full round, so that somebody else notices when this machine is silent. It carries nothing
// but that it is alive, and its failure is told in health only: an alarm about it would have to travel the same way.
import { type Finding, finding } from '../../shared/finding.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import type { Clock } from '../clock.ts';
import { post, SEND_TIMEOUT_MS } from './channels/post.ts';

/** Not more often; outside services expect one a minute. */
const EVERY_MS = MINUTE_MS;

interface Target {
  readonly url: string;
  readonly allowLocal: boolean;
}

interface HeartbeatParts {
  /** null = not set. */
  readonly target: () => Target | null;
  readonly clock: Clock;
}

/** What the other side said, and when. */
export interface HeartbeatOutcome {
  readonly delivered: boolean;
  /** The status it answered, or why there is no answer. */
  readonly answer: number | Finding;
  readonly atMs: number;
}

export interface Heartbeat {
  /** Call after a round in which all went well. Returns at once. */
  beat(): void;
  /** Asks the address once now, whatever the time of the last; null = none is set. Never rejects. */
  test(): Promise<HeartbeatOutcome | null>;
  /** Why the last one did not arrive; null = it did, or none is set. */
  trouble(): Finding | null;
  close(): Promise<void>;
}

export function createHeartbeat({ target, clock }: HeartbeatParts): Heartbeat {
  let sentMs = Number.NEGATIVE_INFINITY;
  let trouble: Finding | null = null;
  let last: Promise<unknown> = Promise.resolve();
  const stop = new AbortController();
  const send = async (to: Target): Promise<HeartbeatOutcome> => {
    sentMs = clock.steadyMs();
    const sent = await sendBeat(to, stop.signal).catch((error: unknown) => ({
      delivered: false,
      answer: finding('asWritten', String(error)),
    }));
    trouble = sent.delivered ? null : asTrouble(sent.answer);
    return { ...sent, atMs: clock.nowMs() };
  };
  return {
    beat() {
      const to = target();
      if (to === null || clock.steadyMs() - sentMs < EVERY_MS) return;
      last = send(to);
    },
    async test() {
      const to = target();
      if (to === null) return null;
      const sent = send(to);
      last = sent;
      return sent;
    },
    trouble: () => (target() === null ? null : trouble),
    async close() {
      stop.abort();
      await last;
    },
  };
}

async function sendBeat(to: Target, signal: AbortSignal): Promise<Omit<HeartbeatOutcome, 'atMs'>> {
  const headers = { 'user-agent': 'takewell', 'content-length': '0' };
  const outcome = await post({ ...to, headers, body: Buffer.alloc(0), timeoutMs: SEND_TIMEOUT_MS, signal });
  if (outcome.kind !== 'answered') return { delivered: false, answer: outcome.reason };
  return { delivered: outcome.status >= 200 && outcome.status < 300, answer: outcome.status };
}

function asTrouble(answer: number | Finding): Finding {
  return typeof answer === 'number' ? finding('answers', answer) : answer;
}
