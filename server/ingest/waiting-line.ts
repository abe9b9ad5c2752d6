// The line in which messages wait for the store: in order, counted, and bounded in number and bytes. It stores nothing itself.
import type { Problem } from '../../shared/problem.ts';
import type { ArrivedMessage } from './arrived-message.ts';

export interface Waiting {
  readonly message: ArrivedMessage;
  readonly resolve: () => void;
  readonly reject: (reason: Problem) => void;
}

export interface WaitingLine {
  length(): number;
  /** True when there is no room for this message; a message is always let into an empty line. */
  isFullFor(message: ArrivedMessage): boolean;
  add(one: Waiting): void;
  /** Takes from the front as many as one transaction should hold: at least one while any waits. */
  takeGroup(): Waiting[];
  /** Puts a group that was taken back to the front, in its order. */
  putBack(group: readonly Waiting[]): void;
}

/** A transaction takes at most so many messages and so many bytes (some 10,000 readings), so that a flood holds up nothing else for long. */
const GROUP = 1_000;
const GROUP_BYTES = 1024 * 1024;
/** More than this waiting means that the store has been down for long: nodes keep their readings themselves. */
const MOST_WAITING = 100_000;
const MOST_WAITING_BYTES = 64 * 1024 * 1024;

export function createWaitingLine(): WaitingLine {
  const line: Waiting[] = [];
  let bytes = 0;

  const countGroup = (): number => {
    let count = 0;
    let groupBytes = 0;
    for (const { message } of line) {
      groupBytes += message.payload.byteLength;
      if (count === GROUP || (count > 0 && groupBytes > GROUP_BYTES)) break;
      count += 1;
    }
    return count;
  };

  return {
    length: () => line.length,
    isFullFor: ({ payload }) =>
      line.length >= MOST_WAITING || (line.length > 0 && bytes + payload.byteLength > MOST_WAITING_BYTES),
    add(one) {
      line.push(one);
      bytes += one.message.payload.byteLength;
    },
    takeGroup() {
      const group = line.splice(0, countGroup());
      bytes -= sizeOf(group);
      return group;
    },
    putBack(group) {
      line.unshift(...group);
      bytes += sizeOf(group);
    },
  };
}

function sizeOf(group: readonly Waiting[]): number {
  return group.reduce((sum, { message }) => sum + message.payload.byteLength, 0);
}
