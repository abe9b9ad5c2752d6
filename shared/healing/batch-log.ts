// What a line of a batch's log is about, as data beside what a person wrote: each reader is told it in their language. The record says it in English.
import type { ProfileDocument, StageName } from './profile.ts';

/** Which check was answered, and how. */
export interface AnsweredCheck {
  /** Of the check in the profile version that the batch has pinned. */
  readonly id: string;
  /** The occasion, as `PlannedCheck.checkId`; null = not known, of lines that were written before it was kept. */
  readonly checkId: string | null;
  readonly answer: 'yes' | 'no';
}

/** What can be corrected of a batch, in the order in which it is said. */
export const correctable = ['code', 'scion', 'rootstock', 'method', 'trays', 'plants', 'closedAt'] as const;

/** Old and new value of one field; '' = empty, times as RFC 3339 UTC. */
export interface Correction {
  readonly field: (typeof correctable)[number];
  readonly before: string | number;
  readonly after: string | number;
}

export type LogAbout =
  | { readonly check: AnsweredCheck }
  | { readonly stage: StageName }
  | { readonly changes: readonly Correction[] };

interface Line {
  readonly about?: LogAbout | null;
  readonly note: string;
}

/** What `about` says of a check, a stage it was moved on to, or corrections; each null where it is about something else. */
export function partsOfAbout(about: LogAbout | null | undefined): {
  readonly check: AnsweredCheck | null;
  readonly stage: StageName | null;
  readonly changes: readonly Correction[] | null;
} {
  return { check: null, stage: null, changes: null, ...about };
}

/** The question of a check, in the words of the plan. A plan that is pinned has every check that was answered by it. */
export function questionOf(id: string, { checks }: Pick<ProfileDocument, 'checks'>): string {
  return checks.find((check) => check.id === id)?.question ?? id;
}

/** The line in English and in the plan's own words, for the record: what it is about, then what the person wrote. */
export function plainNote({ about, note }: Line, document: Pick<ProfileDocument, 'checks'>): string {
  const { check, stage, changes } = partsOfAbout(about);
  const said =
    check === null
      ? (stage ?? changes?.map(plainCorrection).join('; ') ?? '')
      : `${questionOf(check.id, document)} ${check.answer}`;
  return [said, note].filter((part) => part !== '').join(': ');
}

/** Such as `plants: 1000 → 980`. */
function plainCorrection({ field, before, after }: Correction): string {
  const said = (value: string | number) => (value === '' ? '(empty)' : value);
  return `${field === 'closedAt' ? 'closed' : field}: ${said(before)} → ${said(after)}`;
}
