// Writes what became of a notice. What cannot be written is kept here and written first thing later, so that a full disk
// never makes the same notice ring again and again.
import type { Notice } from '../store/store.ts';
import type { Outcome } from './decide-outcome.ts';
import type { DeliveryParts } from './delivery-parts.ts';

export interface Recorder {
  /** Never rejects. */
  record(notice: Notice, outcome: Outcome): Promise<void>;
  /** Writes what could not be written; stops at the first that still cannot. Never rejects. */
  catchUp(): Promise<void>;
  /** True for a notice whose outcome is known but not yet written: it must not be sent. */
  holds(noticeId: string): boolean;
  heldCount(): number;
}

interface Held {
  readonly notice: Notice;
  readonly outcome: Outcome;
  readonly atMs: number;
}

export function createRecorder({ store, clock, log }: Pick<DeliveryParts, 'store' | 'clock' | 'log'>): Recorder {
  const held = new Map<string, Held>();
  async function write(one: Held): Promise<boolean> {
    try {
      await mark(store.notices, one);
      held.delete(one.notice.id);
      return true;
    } catch (err) {
      held.set(one.notice.id, one);
      log.error({ err, notice: one.notice.id, outcome: one.outcome }, 'the result of a notice could not be stored');
      return false;
    }
  }
  return {
    async record(notice, outcome) {
      logOutcome(log, notice, outcome);
      await write({ notice, outcome, atMs: clock.nowMs() });
    },
    async catchUp() {
      for (const one of [...held.values()]) if (!(await write(one))) return;
    },
    holds: (noticeId) => held.has(noticeId),
    heldCount: () => held.size,
  };
}

function mark(notices: DeliveryParts['store']['notices'], { notice: { id }, outcome, atMs }: Held): Promise<void> {
  if (outcome.type === 'sent') return notices.markSent(id, outcome.result, atMs);
  if (outcome.type === 'given-up') return notices.markGivenUp(id, outcome.result, atMs);
  return notices.markRetry(id, outcome.result, atMs, outcome.nextTryMs);
}

function logOutcome(log: DeliveryParts['log'], notice: Notice, outcome: Outcome): void {
  const details = { notice: notice.id, channel: notice.channel, result: outcome.result };
  if (outcome.type === 'sent') log.info(details, 'notice sent');
  else if (outcome.type === 'given-up') log.warn(details, 'notice given up');
  else log.warn({ ...details, nextTryMs: outcome.nextTryMs }, 'notice not delivered, will be tried again');
}
