// A batch: the trays that go through one chamber together, pinned to one version of a profile. Times are ms since the epoch.
import type { BatchTimes } from './batch-clock.ts';
import type { StageName } from './profile.ts';

export interface Hold {
  readonly fromMs: number;
  /** null = the batch is on hold now. */
  readonly toMs: number | null;
}

export interface Move {
  readonly stage: StageName;
  readonly atMs: number;
}

export interface Batch {
  readonly id: string;
  readonly code: string;
  readonly chamberId: string;
  readonly profileId: string;
  readonly profileVersion: number;
  readonly scion: string;
  readonly rootstock: string;
  readonly method: string;
  readonly trays: number;
  readonly plants: number;
  readonly openedMs: number;
  /** When the chamber was closed; null while it is being loaded. */
  readonly closedMs: number | null;
  readonly finishedMs: number | null;
  /** When it was told to the program, which may be long after its opening; absent = with its opening. */
  readonly enteredMs?: number | null;
  readonly takenPlants: number | null;
  readonly holds: readonly Hold[];
  readonly moves: readonly Move[];
}

/** The part of a batch that its clock runs on. `zone` is the site's IANA time zone. */
export function timesOf(batch: Batch, zone: string): BatchTimes {
  const { openedMs, closedMs, finishedMs, holds, moves } = batch;
  return { openedMs, closedMs, finishedMs, zone, holds, moves };
}
