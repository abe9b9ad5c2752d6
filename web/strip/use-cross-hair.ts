// Where the cross-hair of a chart stands: pointed to, or moved by keys from one bucket to the next.
import { useState } from 'preact/hooks';
import type { StripData } from './strip-data.ts';
import type { Window } from './zoom.ts';

interface CrossHair {
  /** Seconds; null = nowhere. */
  readonly atSec: number | null;
  readonly isSpoken: boolean;
}

/** The next place of the cross-hair, kept inside the window: from where it is, else from now, else from the middle. Pure. */
export function nextPlace(data: StripData, shown: Window, atSec: number | null, by: -1 | 1): number {
  const [first, last] = [shown.fromMs / 1000, shown.toMs / 1000];
  const isInside = (at: number | null): at is number => at !== null && at >= first && at <= last;
  const beginning = isInside(data.nowSec) ? data.nowSec : (first + last) / 2;
  const from = isInside(atSec) ? atSec : beginning;
  const bucket = Math.floor((from - data.fromSec) / data.bucketSeconds) + by;
  return Math.min(last, Math.max(first, data.fromSec + (bucket + 0.5) * data.bucketSeconds));
}

export function useCrossHair(data: StripData | undefined, shown: Window) {
  const [{ atSec, isSpoken }, set] = useState<CrossHair>({ atSec: null, isSpoken: false });
  return {
    ...{ atSec, isSpoken },
    point: (at: number | null) => set({ atSec: at, isSpoken: false }),
    step: (by: -1 | 1) => {
      if (data !== undefined) set({ atSec: nextPlace(data, shown, atSec, by), isSpoken: true });
    },
  };
}
