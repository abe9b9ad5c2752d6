// How take, exposure and what goes with lost take are said. Pure.

import type { LearnedAssociation, LearnedBatch } from '../../shared/api/learning.ts';
import { words } from '../late-strings.ts';
import { numberText } from '../quantities.ts';

const names = Object.keys(words.learning.exposures) as readonly (keyof typeof words.learning.exposures)[];

/** The columns of exposures: name and head, in their order. */
export const exposureColumns = names.map((name) => ({ name, label: words.learning.exposures[name] }));

const percent = (share: number) => numberText(100 * share, 1);

/** "95.0 % (93.5–96.2)". */
export function takeWords({ share, low, high }: LearnedBatch['take']): string {
  return words.learning.takeInterval(percent(share), percent(low), percent(high));
}

/** With no more digits than it deserves; a missing one is said and not shown as zero. */
export function exposureWords(value: number | null | undefined): string {
  if (value === null || value === undefined) return words.learning.unknown;
  return value >= 100 ? numberText(value, 0) : numberText(value, 1);
}

function labelOf(exposure: string): string {
  return names.includes(exposure as (typeof names)[number])
    ? words.learning.exposures[exposure as (typeof names)[number]]
    : exposure;
}

function pairWords({ concordant, discordant }: LearnedAssociation['pairs'], batches: number): string {
  const comparable = concordant + discordant;
  if (comparable === 0) return words.learning.nothingCompared(batches);
  const say = concordant >= discordant ? words.learning.moreLoss : words.learning.lessLoss;
  return say(Math.max(concordant, discordant), comparable, batches);
}

/** One sentence an exposure; where there are too few batches for any of them, one sentence for all. */
export function associationSentences(associations: readonly LearnedAssociation[], batches: number): string[] {
  const isTooFew = associations.every(({ strength }) => strength === 'too-few');
  if (isTooFew) return [words.learning.tooFew(batches)];
  return associations.map(({ exposure, strength, pairs, batches: known }) =>
    words.learning.association(labelOf(exposure), words.learning.strengths[strength], pairWords(pairs, known)),
  );
}
