// How long a probe may be silent, and when a reading is late.
import { MINUTE_MS } from '../units.ts';

/** Allowed silence of a probe nobody has set otherwise: nodes publish every 10 s to 1 min; ten minutes of sun can cost a batch (ours). */
export const DEFAULT_SILENCE_MS = 10 * MINUTE_MS;

/** A reading that came in later than this after it was measured is stored and marked, and raises no alarm as if it were now (ours). */
export const LATE_AFTER_MS = 2 * MINUTE_MS;
