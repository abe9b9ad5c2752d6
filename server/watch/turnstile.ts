// One at a time: whatever decides on the state of the watch and commits what it decided goes through here, so that no two decide on the same state.

export interface Turnstile {
  /** Runs the task after all that came before; its outcome is the caller's. */
  inTurn<T>(task: () => Promise<T>): Promise<T>;
}

export function createTurnstile(): Turnstile {
  let last: Promise<unknown> = Promise.resolve();
  return {
    inTurn(task) {
      const result = last.then(task, task);
      // The outcome belongs to the caller; the next in line only waits for the end.
      last = result.catch(() => null);
      return result;
    },
  };
}
