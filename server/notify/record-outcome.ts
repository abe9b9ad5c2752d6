// Writes what became of a notice. What cannot be written is kept here and written first thing later, so that a full disk
// never makes the same notice ring again and again.
import type { Commit, Notice, NoticeOutcome } from '../store/store.ts';
import type { Outcome } from './decide-outcome.ts';
import type { DeliveryParts } from './delivery-parts.ts';
import { oneAtATime } from './one-at-a-time.ts';

export interface Recorder {
  /** Writes what one try to tell these has come to, together with what other tries come to at the same moment. Never rejects. */
  record(notices: readonly Notice[], tried: Tried): Promise<void>;
  /** Writes what could not be written. Never rejects. */
  catchUp(): Promise<void>;
  /** True for a notice whose outcome is known but not yet written: it must not be sent. */
  holds(noticeId: string): boolean;
  heldCount(): number;
}

/** What one try has come to, and what is kept with it of target and link. */
export interface Tried extends Pick<Commit, 'targetResults' | 'phoneResults' | 'links'> {
  readonly outcome: Outcome;
}

type Work = Omit<Tried, 'outcome'> & Required<Pick<Commit, 'outcomes'>>;

export function createRecorder({ store, clock, log }: Pick<DeliveryParts, 'store' | 'clock' | 'log'>): Recorder {
  const held = new Set<Work>();
  const heldOutcomes = () => [...held].flatMap(({ outcomes }) => outcomes);
  const write = oneAtATime(async () => {
    if (held.size === 0) return;
    // Lets every answer that is already in the sockets join.
    await new Promise((resolve) => setImmediate(resolve));
    const works = [...held];
    const work = inOne(works);
    try {
      await store.commit(work);
      for (const one of works) held.delete(one);
    } catch (err) {
      log.error({ err, outcomes: work.outcomes }, 'the result of a notice could not be stored');
    }
  });
  return {
    async record(notices, { outcome, ...kept }) {
      for (const notice of notices) logOutcome(log, notice, outcome);
      const atMs = clock.nowMs();
      held.add({ ...kept, outcomes: notices.map(({ id }) => asRow(id, outcome, atMs)) });
      await write();
    },
    catchUp: write,
    holds: (noticeId) => heldOutcomes().some((one) => one.noticeId === noticeId),
    heldCount: () => heldOutcomes().length,
  };
}

function inOne(works: readonly Work[]): Work {
  return {
    outcomes: works.flatMap(({ outcomes }) => outcomes),
    targetResults: works.flatMap(({ targetResults = [] }) => targetResults),
    phoneResults: works.flatMap(({ phoneResults = [] }) => phoneResults),
    links: works.flatMap(({ links = [] }) => links),
  };
}

function asRow(noticeId: string, outcome: Outcome, atMs: number): NoticeOutcome {
  const { result } = outcome;
  if (outcome.type === 'retry') return { noticeId, state: 'waiting', result, atMs, nextTryMs: outcome.nextTryMs };
  return { noticeId, state: outcome.type, result, atMs, nextTryMs: atMs };
}

function logOutcome(log: DeliveryParts['log'], notice: Notice, outcome: Outcome): void {
  const details = { notice: notice.id, channel: notice.channel, result: outcome.result };
  if (outcome.type === 'sent') log.info(details, 'notice sent');
  else if (outcome.type === 'given-up') log.warn(details, 'notice given up');
  else log.warn({ ...details, nextTryMs: outcome.nextTryMs }, 'notice not delivered, will be tried again');
}
