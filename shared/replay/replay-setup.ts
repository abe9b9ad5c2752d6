// What a replay is told about the chamber and its batch before the first reading.
import type { Rule, Scene } from '../alarms/rules/rule.ts';
import type { Corridor } from '../healing/corridor.ts';
import type { HeatForecaster } from './heat-forecaster.ts';
import type { JudgedSample } from './judged-probe.ts';
import type { ReplayProbe } from './replayed-probes.ts';

/** The part of a scene that comes from the batch. The same object while nothing of it has changed. */
export type Care = Pick<Scene, 'care' | 'suppression'>;

export interface ReplaySetup {
  /** The probes of the chamber, canopy and film. */
  readonly probes: readonly ReplayProbe[];
  readonly corridorAt: (atMs: number) => Corridor | null;
  /** When the batch was in the chamber: from its opening (or closing), to its end; null = it is still there. */
  readonly batch: { readonly fromMs: number; readonly toMs: number | null };
  /** What plan and log said of the batch at an instant. */
  readonly careAt?: (atMs: number) => Care;
  /** Foresees heat; that of the live watch when not given. Another is put here to be judged by the same rules. */
  readonly forecaster?: HeatForecaster;
  /** Those of the live watch when not given. */
  readonly rules?: readonly Rule[];
  /** How often the watch looks when nothing is heard, ms; as often as the live one when not given. */
  readonly tickMs?: number;
  /** Gets every sample of a probe once it is judged for good, a reading later than it was heard. */
  readonly settled?: (probe: number, sample: JudgedSample) => void;
}
