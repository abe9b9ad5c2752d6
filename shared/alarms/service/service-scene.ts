// Everything the rules about the service itself may look at, at one instant.
import type { Finding } from '../../finding.ts';
import type { PlaceScene } from '../rules/rule.ts';
import type { BatchPlace, OutageFacts } from '../service-facts.ts';

export interface ServiceScene extends PlaceScene {
  readonly openBatches: readonly BatchPlace[];
  /** Why no message can come in; null = they can. */
  readonly brokerTrouble: Finding | null;
  readonly disk: DiskNow;
  /** How far the clock of the machine has jumped, ms, positive = forward; only in the round that has seen it. */
  readonly clockJumpMs: number | null;
  /** A gap in the watch that is to be told now. */
  readonly outage: OutageFacts | null;
  /** null = not looked at. */
  readonly reach: ReachNow | null;
}

export interface DiskNow {
  /** %; null = not known. */
  readonly freePercent: number | null;
  /** Why readings cannot be stored; null = they can. */
  readonly storeTrouble: Finding | null;
}

/** Whom alerts can reach. */
export interface ReachNow {
  readonly people: readonly PersonReach[];
  /** A webhook that is not about one person, such as that of a gateway, takes notices. */
  readonly hasProgram: boolean;
  /** What the rota says; null = there is none, and everybody is told always. */
  readonly duty: { readonly isAnybodyOn: boolean; readonly nextGapMs: number | null } | null;
}

export interface PersonReach {
  readonly personId: string;
  readonly name: string;
  /** Ways by which this person can be told: `works` = the last thing sent was taken over, or nothing was sent yet. */
  readonly ways: readonly { readonly channel: string; readonly works: boolean; readonly trouble: Finding | null }[];
  readonly isOnDuty: boolean;
}
