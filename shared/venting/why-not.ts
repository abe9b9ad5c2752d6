// Why there is no fit or no proposal: one word for programs, one plain sentence for people. Never an error: "no" is an ordinary answer here.

export type WhyNot =
  // Of a fit
  | 'gap-never-changed'
  | 'no-house-air'
  | 'saturated'
  | 'too-few-readings'
  | 'too-fast'
  | 'too-slow'
  | 'no-decay'
  | 'two-paces'
  | 'uncertain'
  | 'poor-fit'
  | 'other-source'
  | 'too-few-gaps'
  | 'not-monotone'
  // Of a proposal
  | 'limp'
  | 'fit-too-old'
  | 'no-air-now'
  | 'still-settling'
  | 'already-there'
  | 'does-not-match'
  | 'house-too-wet'
  | 'house-too-dry'
  | 'no-gap-left'
  | 'not-sure-enough'
  | 'dries-too-fast';

export interface Refusal {
  readonly why: WhyNot;
  /** What is so, and what to do. */
  readonly reason: string;
}
