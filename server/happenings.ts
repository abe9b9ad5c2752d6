// What has come true by one turn: for the screens, the siren topic and the deliverer. Made only after the commit.
import type { Effect } from '../shared/alarms/watch-state.ts';

export interface Happenings {
  readonly chamberIds?: readonly string[];
  readonly probeIds?: readonly string[];
  /** Chambers that changed, or whose batch, log or checks did. */
  readonly batches?: readonly { readonly chamberId: string; readonly batchId: string | null }[];
  readonly alarms?: readonly Extract<Effect, { type: 'alarm-changed' }>[];
  readonly noticesWritten?: boolean;
}

/** What a group of messages brought, with how much of it. */
export interface Admitted extends Happenings {
  readonly readings: number;
  readonly refused: number;
  /** A reading that was measured a while ago was among them. */
  readonly hasLate: boolean;
}

/** Resolves when everybody has been told; await it before the next turn, so that nothing is told before what came first. */
export type Announce = (happenings: Happenings) => Promise<void>;
