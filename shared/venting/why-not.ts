// Why there is no fit or no proposal, with the figures it is said with. Never an error: "no" is an ordinary answer here. `say-venting.ts` says it.

/** What is so and needs no figure. */
type PlainWhyNot =
  // Of a fit
  | 'gap-never-changed'
  | 'no-house-air'
  | 'saturated'
  | 'too-fast'
  | 'too-slow'
  | 'no-decay'
  | 'two-paces'
  | 'other-source'
  | 'not-monotone'
  // Of a proposal
  | 'fit-too-old'
  | 'already-there';

export type LimpAct = 'close' | 'mist' | 'hold';

/** Humidity in %RH, gaps and shares in %. */
export type Refusal =
  | { readonly why: PlainWhyNot }
  | { readonly why: 'too-few-readings'; readonly readings: number }
  /** The ± of the rate. */
  | { readonly why: 'uncertain'; readonly percent: number }
  /** What the exchange explains. */
  | { readonly why: 'poor-fit'; readonly percent: number }
  | { readonly why: 'too-few-gaps'; readonly gapPercent: number }
  | { readonly why: 'limp'; readonly acts: readonly LimpAct[]; readonly backToPercent: number }
  | { readonly why: 'no-air-now'; readonly place: 'chamber' | 'house' }
  | { readonly why: 'still-settling'; readonly minutes: number }
  | { readonly why: 'does-not-match'; readonly expected: number; readonly measured: number }
  | { readonly why: 'house-too-wet'; readonly humidity: number }
  | { readonly why: 'house-too-dry'; readonly gapPercent: number; readonly humidity: number }
  | { readonly why: 'no-gap-left' | 'not-sure-enough'; readonly isTooDry: boolean }
  | { readonly why: 'dries-too-fast'; readonly gracePerHour: number };

/** Why a batch gets no proposal now: the plan, a hold, or one of the above. */
export type NoOpening =
  | Refusal
  | { readonly why: 'over' | 'on-hold' | 'no-step' }
  /** Venting is still far off; or the next step is, and `unknown` says what keeps the exchange from being known. */
  | { readonly why: 'not-yet'; readonly isFarOff: boolean; readonly unknown: Refusal | null };
