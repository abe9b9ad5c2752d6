// The intake: messages that arrive while a transaction is written go together into the next one (group commit), and a message's promise
// resolves only when it is durably stored. While the store cannot write, messages wait here and their nodes are not acknowledged.
import type { Logger } from 'pino';
import { Problem } from '../../shared/problem.ts';
import type { ArrivedMessage } from './arrived-message.ts';

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
  readonly refuse: (message: ArrivedMessage, reason: string) => Promise<void>;
  readonly log: Logger;
  readonly retryMs?: number;
}

interface Waiting {
  readonly message: ArrivedMessage;
  readonly resolve: () => void;
  readonly reject: (reason: Problem) => void;
}

/** A transaction takes at most this many messages, so that a flood does not make the first of them wait for the last. */
const GROUP = 1_000;
/** More than this waiting means that the store has been down for long: nodes keep their readings themselves. */
const MOST_WAITING = 100_000;

export function createIntake(parts: IntakeParts): Intake {
  const queue: Waiting[] = [];
  let trouble: Problem | null = null;
  let isClosed = false;
  let running: Promise<void> | null = null;

  const run = async () => {
    // Lets everything that is already in the sockets join the first group.
    await new Promise((resolve) => setImmediate(resolve));
    while (queue.length > 0 && !isClosed) await storeGroup(queue.splice(0, GROUP));
    running = null;
  };

  const storeGroup = async (group: Waiting[]): Promise<void> => {
    try {
      await parts.admit(group.map(({ message }) => message));
      trouble = null;
      for (const one of group) one.resolve();
    } catch (error) {
      await afterFailure(group, error);
    }
  };

  const afterFailure = async (group: Waiting[], error: unknown): Promise<void> => {
    if (error instanceof Problem) {
      if (trouble === null)
        parts.log.error({ err: error }, 'readings cannot be stored; they wait and nodes are not acknowledged');
      trouble = error;
      queue.unshift(...group);
      await pause(parts.retryMs ?? 1_000);
      return;
    }
    // A fault of ours. Alone, a message cannot hold up the others.
    if (group.length > 1) for (const one of group) await storeGroup([one]);
    else await putOnRecord(group, error);
  };

  const putOnRecord = async ([one]: Waiting[], error: unknown): Promise<void> => {
    if (one === undefined) return;
    parts.log.error({ err: error, topic: one.message.topic }, 'a message made admission fail');
    try {
      await parts.refuse(one.message, 'Takewell could not read this message; the log of the service says more.');
      one.resolve();
    } catch (failure) {
      // Not on record, so not acknowledged: the node sends it again.
      parts.log.error({ err: failure }, 'a refusal could not be stored');
      one.reject(new Problem('store-unavailable', 'The message could not be put on record.', { cause: failure }));
    }
  };

  return {
    push(message) {
      if (isClosed || queue.length >= MOST_WAITING) return Promise.reject(closed(isClosed));
      return new Promise<void>((resolve, reject) => {
        queue.push({ message, resolve, reject });
        running ??= run();
      });
    },
    trouble: () => trouble,
    waiting: () => queue.length,
    async close() {
      isClosed = true;
      await running;
      for (const one of queue.splice(0)) one.reject(closed(true));
    },
  };
}

function closed(isClosed: boolean): Problem {
  return new Problem('unavailable', isClosed ? 'The service is stopping.' : 'Too many readings wait for the store.');
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
