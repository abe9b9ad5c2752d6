// The intake: messages that arrive while a transaction is written go together into the next one (group commit), and a message's promise
// resolves only when it is durably stored. While the store cannot write, messages wait here and their nodes are not acknowledged.
import type { Logger } from 'pino';
import { Problem } from '../../shared/problem.ts';
import { because, type Reason } from '../../shared/readings/reason.ts';
import { SECOND_MS } from '../../shared/units.ts';
import type { ArrivedMessage } from './arrived-message.ts';
import { createWaitingLine, type Waiting } from './waiting-line.ts';

export interface Intake {
  /** Resolves when the message is stored, or refused on record. Rejects only when the intake is full or closed: do not acknowledge then. */
  push(message: ArrivedMessage): Promise<void>;
  /** Why nothing can be stored at the moment; null = all is well. */
  trouble(): Problem | null;
  waiting(): number;
  close(): Promise<void>;
}

export interface IntakeParts {
  readonly admit: (messages: readonly ArrivedMessage[]) => Promise<void>;
  /** Puts a message that made the program itself fail on record. */
  readonly refuse: (message: ArrivedMessage, reason: Reason) => Promise<void>;
  readonly log: Logger;
  readonly retryMs?: number;
}

/** Those of a group that have to wait for the store, in their order; empty = every one is answered. */
type Left = readonly Waiting[];

export function createIntake(parts: IntakeParts): Intake {
  const line = createWaitingLine();
  let trouble: Problem | null = null;
  let isClosed = false;
  let running: Promise<void> | null = null;
  let endPause: (() => void) | null = null;

  const run = async () => {
    // Lets everything that is already in the sockets join the first group.
    await new Promise((resolve) => setImmediate(resolve));
    while (line.length() > 0 && !isClosed) {
      const left = await storeGroup(line.takeGroup());
      line.putBack(left);
      if (left.length > 0 && !isClosed) await pause();
    }
    running = null;
  };

  const storeGroup = async (group: readonly Waiting[]): Promise<Left> => {
    try {
      await parts.admit(group.map(({ message }) => message));
      trouble = null;
      for (const one of group) one.resolve();
      return [];
    } catch (error) {
      if (isStoreTrouble(error)) return startTrouble(group, error);
      // A fault of ours. Alone, a message cannot hold up the others.
      return group.length > 1 ? storeOneByOne(group) : putOnRecord(group, error);
    }
  };

  const storeOneByOne = async (group: readonly Waiting[]): Promise<Left> => {
    for (const [index, one] of group.entries()) {
      const left = await storeGroup([one]);
      if (left.length > 0) return group.slice(index);
    }
    return [];
  };

  const startTrouble = (group: Left, problem: Problem): Left => {
    if (trouble === null)
      parts.log.error({ err: problem }, 'readings cannot be stored; they wait and nodes are not acknowledged');
    trouble = problem;
    return group;
  };

  const putOnRecord = async (group: readonly Waiting[], error: unknown): Promise<Left> => {
    for (const one of group) {
      parts.log.error({ err: error, topic: one.message.topic }, 'a message made admission fail');
      try {
        await parts.refuse(one.message, because('messageFailed'));
        trouble = null;
        one.resolve();
      } catch (failure) {
        if (isStoreTrouble(failure)) return startTrouble(group, failure);
        // Not on record, so not acknowledged: the node sends it again.
        parts.log.error({ err: failure }, 'a refusal could not be stored');
        one.reject(new Problem('unavailable', ({ problems }) => problems.notOnRecord, { cause: failure }));
      }
    }
    return [];
  };

  const pause = () =>
    new Promise<void>((resolve) => {
      const timer = setTimeout(resolve, parts.retryMs ?? SECOND_MS);
      endPause = () => {
        clearTimeout(timer);
        resolve();
      };
    });

  return {
    push(message) {
      if (isClosed || line.isFullFor(message)) return Promise.reject(turnAway(isClosed));
      return new Promise<void>((resolve, reject) => {
        line.add({ message, resolve, reject });
        running ??= run();
      });
    },
    trouble: () => trouble,
    waiting: () => line.length(),
    async close() {
      isClosed = true;
      endPause?.();
      await running;
      while (line.length() > 0) for (const one of line.takeGroup()) one.reject(turnAway(true));
    },
  };
}

/** Trouble that passes when somebody has seen to the disk; whatever else went wrong would go wrong again. */
function isStoreTrouble(error: unknown): error is Problem {
  return error instanceof Problem && (error.code === 'store-full' || error.code === 'store-unavailable');
}

function turnAway(isClosed: boolean): Problem {
  return new Problem('unavailable', ({ problems }) => (isClosed ? problems.stopping : problems.tooManyWaiting));
}
