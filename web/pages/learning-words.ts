// How take, exposure and what goes with lost take are said. Pure.

import type { LearnedAssociation, LearnedBatch } from '../../shared/api/learning.ts';
import { words } from '../late-strings.ts';
import { numberText, temperatureLimitText } from '../quantities.ts';
import { differenceInUnit, inUnit, temperatureUnit } from '../temperature-unit.ts';

type Exposure = keyof typeof words.learning.exposures;
const names = Object.keys(words.learning.exposures) as readonly Exposure[];

/** The columns of exposures: name and head in the reader's unit, in their order. */
export function exposureColumns(): readonly { readonly name: Exposure; readonly label: string }[] {
  return names.map((name) => ({ name, label: headOf(name) }));
}

function headOf(name: Exposure): string {
  const unit = temperatureUnit.value;
  const { exposures } = words.learning;
  return name === 'degree-hours-above-28'
    ? exposures[name](`${temperatureLimitText(28)} ${unit}`)
    : exposures[name](unit);
}

const percent = (share: number) => numberText(100 * share, 1);

/** "95.0 % (93.5–96.2)". */
export function takeWords({ share, low, high }: LearnedBatch['take']): string {
  return words.learning.takeInterval(percent(share), percent(low), percent(high));
}

/** In the reader's unit, with no more digits than it deserves; a missing one is said and not shown as zero. */
export function exposureWords(name: Exposure, value: number | null | undefined): string {
  if (value === null || value === undefined) return words.learning.unknown;
  const said = inReadersUnit(name, value);
  return said >= 100 ? numberText(said, 0) : numberText(said, 1);
}

function inReadersUnit(name: Exposure, value: number): number {
  if (name === 'degree-hours-above-28') return differenceInUnit(value, temperatureUnit.value);
  const isTemperature = name === 'highest-temperature' || name === 'mean-temperature';
  return isTemperature ? inUnit(value, temperatureUnit.value) : value;
}

function labelOf(exposure: string): string {
  return names.includes(exposure as Exposure) ? headOf(exposure as Exposure) : exposure;
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
