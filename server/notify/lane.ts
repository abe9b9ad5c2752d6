// Runs jobs side by side, at most so many at once; the others wait in order.

type Lane = (job: () => Promise<void>) => Promise<void>;

/** `width` ≥ 1. The promise is the job's own: it settles as the job does. */
export function createLane(width: number): Lane {
  const waiting: (() => void)[] = [];
  let free = width;
  return async (job) => {
    if (free > 0) free -= 1;
    else await new Promise<void>((resolve) => waiting.push(resolve));
    try {
      await job();
    } finally {
      // The place is handed on, or free again.
      const next = waiting.shift();
      if (next === undefined) free += 1;
      else next();
    }
  };
}
