// What a rule is: it looks at a scene and says how far beyond its limit a condition is. It knows no state, no person, no channel.
import type { Expected, HeatAhead } from '../../forecast/heat-ahead.ts';
import type { Corridor } from '../../healing/corridor.ts';
import type { ChamberClimate, ProbeNow } from '../../readings/chamber-climate.ts';
import type { AlarmAbout, Level, Priority, RuleId } from '../alarm.ts';
import type { Delays } from '../debounce.ts';
import type { ServiceFacts } from '../service-facts.ts';
import type { Suppression } from '../suppression.ts';
import type { SceneCare } from './scene-care.ts';

export interface SceneProbe {
  readonly probeId: string;
  readonly place: 'canopy' | 'film' | 'house';
  /** Time of the newest reading, ms; null = never heard. */
  readonly lastHeardMs: number | null;
  /** When the watch of this probe began: a probe just placed is not silent yet. */
  readonly watchedSinceMs: number;
  readonly silenceMs: number;
}

/** What every place that is watched has in common: a chamber, or the service itself. */
export interface PlaceScene {
  readonly nowMs: number;
  readonly chamberId: string;
  /** The open batch; null = the chamber is empty and nothing in it can be lost. */
  readonly batchId: string | null;
  /** Set while the air is disturbed on purpose. */
  readonly suppression?: Suppression | null;
  /** True while no reading can come in, or their flood after that has not ended: silence says nothing then. */
  readonly isCutOff?: boolean;
}

/** Everything the rules may look at, for one chamber at one instant. */
export interface Scene extends PlaceScene {
  /** Limits now; null = no batch, or outside its stages. */
  readonly corridor: Corridor | null;
  readonly climate: ChamberClimate;
  readonly probes: readonly SceneProbe[];
  /** What the trend of the hottest temperature foretells; null or absent = nothing is known of it. */
  readonly ahead?: HeatAhead | null;
  /** Newest reading of each probe, for the rule that doubts them; absent = not looked at. */
  readonly readings?: readonly ProbeNow[];
  /** What plan and log say of the batch; absent = nothing known. */
  readonly care?: SceneCare;
}

export type LevelLimits = readonly [number | null, number | null];

export const noLimits: LevelLimits = [null, null];

export interface Judgement {
  readonly probeId: string | null;
  /** Set by rules about checks: each subject has an alarm of its own. */
  readonly about?: AlarmAbout;
  readonly level: Level | 'unknown';
  readonly value: number | null;
  /** The limit of level 1 and of level 2: an alarm names that of the level which stands, whatever the value has reached meanwhile. */
  readonly limits: LevelLimits;
  /** When the condition truly began, if the rule knows better than the moment it was first seen. */
  readonly sinceMs?: number;
  /** When a warning expects its limit to be passed; asked for when its alarm is made or gets worse. */
  readonly expected?: () => Expected;
  /** Set by rules about the service. */
  readonly service?: ServiceFacts;
}

/** How a rule behaves, whatever it looks at. */
export interface RuleTraits extends Delays {
  readonly id: RuleId;
  /** While this other rule stands, this one has nothing to say (suppressed by design). */
  readonly suppressedBy?: RuleId;
  /** Priority at level 1 and 2. */
  readonly priority: readonly [Priority, Priority];
  /** +1: the higher the worse; −1: the lower the worse. */
  readonly worse: 1 | -1;
  /** True for rules that are quiet while the air is disturbed on purpose. Never heat, silence or a bad check. */
  readonly isSuppressible?: true;
  /** True for rules that are quiet while no reading can come in: the alarm of the broker says it for all. */
  readonly needsReadings?: true;
  /** True for rules about something that happens at an instant: it is told, and has nothing to return from. */
  readonly isInstant?: true;
  /** How far back inside its limit a value must come before the condition is over, °C, %RH or kPa; absent for rules without a value. */
  readonly deadband?: number;
}

/** A rule for scenes of one kind. */
export interface Rule<S extends PlaceScene = Scene> extends RuleTraits {
  /** Call it as a method: it looks at its own deadband. `held(subject)`, of a probe or a check, is the level that stands now: a deadband applies on the way back only. */
  judge(scene: S, held: (subjectId: string | null) => Level): Judgement[];
}
