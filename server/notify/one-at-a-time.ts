// Turns that never overlap, however often they are asked for.

/**
 * A function that asks for a turn. Asking during a turn gives one more after it, once, however many ask. The promise is of a turn that
 * began after the asking. `turn` must not reject.
 */
export function oneAtATime(turn: () => Promise<void>): () => Promise<void> {
  let last = Promise.resolve();
  let coming: Promise<void> | null = null;
  return () => {
    coming ??= last = last.then(() => {
      coming = null;
      return turn();
    });
    return coming;
  };
}
