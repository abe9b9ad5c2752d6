// Leaves a service alone that has not answered several times in a row, so that waiting for it holds up nothing else.
import { MINUTE_MS, SECOND_MS } from '../../shared/units.ts';

const FAILURES_TO_OPEN = 3;
const FIRST_PAUSE_MS = 30 * SECOND_MS;
const LONGEST_PAUSE_MS = 5 * MINUTE_MS;
/** How long the others wait for a trial; a little longer than a request may take. */
const TRIAL_MS = 12 * SECOND_MS;

interface Trouble {
  readonly failures: number;
  readonly closedUntilMs: number;
  readonly onTrial: boolean;
}

export interface Circuit {
  /** null = send now; else the instant from which to ask again. After a pause one goes first, alone. */
  ask(service: string, nowMs: number): number | null;
  /** What became of sending: an answer of any kind ends the trouble. */
  note(service: string, isDown: boolean, nowMs: number): void;
}

export function createCircuit(): Circuit {
  const troubles = new Map<string, Trouble>();
  return {
    ask(service, nowMs) {
      const trouble = troubles.get(service);
      if (trouble === undefined || !isOpen(trouble)) return null;
      if (nowMs < trouble.closedUntilMs) return trouble.closedUntilMs;
      troubles.set(service, { ...trouble, onTrial: true, closedUntilMs: nowMs + TRIAL_MS });
      return null;
    },
    note(service, isDown, nowMs) {
      if (isDown) troubles.set(service, worsen(troubles.get(service), nowMs));
      else troubles.delete(service);
    },
  };
}

function worsen(trouble: Trouble | undefined, nowMs: number): Trouble {
  // One that was under way when the pause began says nothing new.
  if (trouble !== undefined && isOpen(trouble) && !trouble.onTrial) return trouble;
  const failures = (trouble?.failures ?? 0) + 1;
  return { failures, closedUntilMs: nowMs + pauseAfter(failures), onTrial: false };
}

function isOpen({ failures }: Trouble): boolean {
  return failures >= FAILURES_TO_OPEN;
}

function pauseAfter(failures: number): number {
  return Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** Math.max(0, failures - FAILURES_TO_OPEN));
}
