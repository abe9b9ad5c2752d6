// What plan and log say of a batch, as far as the rules ask: its checks with their answers, what people saw, and where venting stands.
import type { PlannedCheck } from '../../healing/checks.ts';

export interface SceneCheck extends PlannedCheck {
  readonly answer: { readonly answer: 'yes' | 'no'; readonly atMs: number } | null;
}

/** A log entry that tells how plants or film are. */
export interface SceneReport {
  readonly kind: 'erect' | 'limp' | 'film-wet' | 'film-dry' | 'mist';
  readonly atMs: number;
}

export interface SceneCare {
  /** When the batch was told to the program: what was overdue before that is no alarm. */
  readonly knownSinceMs: number;
  /** All checks of the plan, in order of time. */
  readonly checks: readonly SceneCheck[];
  readonly reports: readonly SceneReport[];
  /** The stage's bound on VPD, and since when the stage runs; null = none. */
  readonly vpd: { readonly highKpa: number; readonly sinceMs: number } | null;
  /** When the stage of venting began, while it runs; null = the batch is in another stage, or on hold. */
  readonly ventingSinceMs: number | null;
  /** True while the newest gap logged is open, or once one was logged since venting began. */
  readonly isGapOpen: boolean;
}
