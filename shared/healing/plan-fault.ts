// What can be wrong with a plan, as data: say-plan-fault.ts tells it to programs and operators, the page in the words of its catalogue.
import type { StageName } from './stage-name.ts';

export type LimitName = 'lowLow' | 'low' | 'high' | 'highHigh';

type Kind =
  | { readonly kind: 'no-closed' }
  | { readonly kind: 'stage-twice'; readonly stage: StageName }
  | { readonly kind: 'stage-order'; readonly stage: StageName; readonly after: StageName }
  | { readonly kind: 'stage-hours'; readonly latest: number; readonly hours: number }
  | { readonly kind: 'stage-not-zero'; readonly stage: StageName }
  | { readonly kind: 'stage-time-of-day'; readonly stage: StageName }
  | { readonly kind: 'end-hours'; readonly latest: number; readonly hours: number }
  | { readonly kind: 'id-twice'; readonly id: string }
  | { readonly kind: 'no-moment' }
  | { readonly kind: 'no-stage'; readonly stage: StageName }
  | {
      readonly kind: 'too-late';
      readonly of: StageName | 'plan';
      readonly lengthHours: number;
      readonly hours: number;
    }
  | { readonly kind: 'repeat-too-short'; readonly least: number }
  | { readonly kind: 'until-without-repeat' }
  | { readonly kind: 'until-before-first'; readonly hours: number }
  | {
      readonly kind: 'out-of-reach';
      readonly quantity: 'temperature' | 'humidity';
      readonly value: number;
      readonly least: number;
      readonly most: number;
    }
  | {
      readonly kind: 'crossing';
      readonly lower: LimitName;
      readonly upper: LimitName;
      readonly quantity: 'temperature' | 'humidity';
      readonly below: number;
      readonly above: number;
      /** How far through the stage, 0–100. */
      readonly percent: number;
    }
  | {
      readonly kind: 'house-crossing';
      readonly lower: LimitName;
      readonly upper: LimitName;
      readonly quantity: 'temperature' | 'humidity';
      readonly by: number;
    }
  /** Faults of a form that is still being filled in; a document from elsewhere meets them in its shape. */
  | { readonly kind: 'no-number' }
  | { readonly kind: 'no-whole-number' }
  | { readonly kind: 'bounds'; readonly least: number; readonly most: number }
  | { readonly kind: 'not-above'; readonly limit: number }
  | { readonly kind: 'text-length'; readonly least: number; readonly most: number }
  | { readonly kind: 'time-of-day' }
  | { readonly kind: 'check-id' };

/** One fault of a plan and its place in the document as a JSON Pointer (RFC 6901). */
export type PlanFault = { readonly where: string } & Kind;
