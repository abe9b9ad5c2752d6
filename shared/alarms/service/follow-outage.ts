// Gaps in the watch: the service did not run, or no reading could come in. A gap is told once, when nodes have had time to send what they
// measured meanwhile. Plain JSON, stored with every change: a kill at any instant neither loses a gap nor tells it twice.
import { MINUTE_MS, SECOND_MS } from '../../units.ts';
import type { OutageFacts } from '../service-facts.ts';

/** Shorter gaps are nobody's business: a restart, an update; ours. */
const LEAST_GAP_MS = 5 * MINUTE_MS;
/** The longest wait for buffers; ours. */
const SETTLE_MS = 3 * MINUTE_MS;
/** Buffers count as sent when nothing late came for so long; ours. */
const QUIET_MS = 20 * SECOND_MS;

export type Outage = Pick<OutageFacts, 'cause' | 'fromMs' | 'toMs'>;

/** The clock was set back, and that is told: it stood at `atMs` then, and what is stored up to `aheadToMs` was dated by the clock before. */
export interface SetBack {
  readonly atMs: number;
  readonly aheadToMs: number;
}

export interface OutageMemory {
  /** When the watch last went round; null = never. */
  readonly aliveMs: number | null;
  /** Since when no reading can come in; null = they can. */
  readonly lostSinceMs: number | null;
  /** A gap that is over and not yet told. */
  readonly settling: Outage | null;
  /** The last time that the clock was set back; null = never. */
  readonly setBack: SetBack | null;
}

export interface OutageRound {
  readonly nowMs: number;
  /** Time since the last round by a clock that does not jump, ms; 0 at the very first start. */
  readonly awayMs: number;
  readonly canHear: boolean;
  /** True when every probe beside a batch has been heard since the gap. */
  readonly isEachHeard: boolean;
  /** When a late reading came last, ms; null = none did. */
  readonly lateMs: number | null;
}

export interface OutageStep {
  readonly memory: OutageMemory;
  /** The gap to be told now. */
  readonly due: Outage | null;
}

export const noOutage: OutageMemory = { aliveMs: null, lostSinceMs: null, settling: null, setBack: null };

/** Takes one round of the watch into the memory. */
export function followOutage(before: OutageMemory, round: OutageRound): OutageStep {
  const settling = stretch(withBrokerGap(withStop(before, round), before, round), round);
  const lostSinceMs = round.canHear ? null : (before.lostSinceMs ?? round.nowMs);
  const isDue = settling !== null && round.canHear && hasSettled(settling, round);
  return {
    memory: { ...before, aliveMs: round.nowMs, lostSinceMs, settling: isDue ? null : settling },
    due: isDue ? settling : null,
  };
}

/** The same memory under a clock that was moved by so much. */
export function moveOutage(memory: OutageMemory, byMs: number): OutageMemory {
  const { aliveMs, lostSinceMs, settling } = memory;
  const move = (ms: number | null) => (ms === null ? null : ms + byMs);
  const moved = settling === null ? null : { ...settling, fromMs: settling.fromMs + byMs, toMs: settling.toMs + byMs };
  return { ...memory, aliveMs: move(aliveMs), lostSinceMs: move(lostSinceMs), settling: moved };
}

/** True while silence says nothing: no reading can come in, or what was buffered is still on its way. */
export function isCutOff({ lostSinceMs, settling }: OutageMemory): boolean {
  return lostSinceMs !== null || settling !== null;
}

/** True while what happened in a gap waits to be told in one. */
export function isSettling({ lostSinceMs, settling }: OutageMemory): boolean {
  return settling !== null && lostSinceMs === null;
}

function withStop({ settling }: OutageMemory, { nowMs, awayMs }: OutageRound): Outage | null {
  if (awayMs <= LEAST_GAP_MS) return settling;
  return join(settling, { cause: 'stopped', fromMs: nowMs - awayMs, toMs: nowMs });
}

function withBrokerGap(settling: Outage | null, { lostSinceMs }: OutageMemory, round: OutageRound): Outage | null {
  if (!round.canHear || lostSinceMs === null || round.nowMs - lostSinceMs <= LEAST_GAP_MS) return settling;
  return join(settling, { cause: 'broker', fromMs: lostSinceMs, toMs: round.nowMs });
}

/** Two gaps that follow each other before the first is told are one. */
function join(before: Outage | null, { cause, fromMs, toMs }: Outage): Outage {
  if (before === null) return { cause, fromMs, toMs };
  return { cause: before.cause, fromMs: Math.min(before.fromMs, fromMs), toMs };
}

/** Back, but deaf: nobody watches yet. */
function stretch(settling: Outage | null, { canHear, nowMs }: OutageRound): Outage | null {
  return settling === null || canHear ? settling : { ...settling, toMs: nowMs };
}

function hasSettled({ toMs }: Outage, { nowMs, isEachHeard, lateMs }: OutageRound): boolean {
  if (nowMs - toMs >= SETTLE_MS) return true;
  return isEachHeard && nowMs - Math.max(toMs, lateMs ?? toMs) >= QUIET_MS;
}
