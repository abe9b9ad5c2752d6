// The texts of a plan while it is edited: those of the shipped profiles in the reader's language, and stored again as they were, so that an
// unchanged one is still said to each reader in theirs.
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { standardTextOf } from '../../shared/healing/say-standard-text.ts';
import { planText } from '../plan-text.ts';
import { saying } from '../saying.ts';

/** As its editor reads it. */
export function readableDocument(document: ProfileDocument): ProfileDocument {
  return withTexts(document, planText) as ProfileDocument;
}

/** As it is stored. */
export function storedDocument(document: ProfileDocument): ProfileDocument {
  const inWords = saying();
  return withTexts(document, (text) => standardTextOf(text, inWords)) as ProfileDocument;
}

/** The same shape with every text changed; ids and names of stages are no texts of a shipped profile, and so stay as they are. */
function withTexts(value: unknown, change: (text: string) => string): unknown {
  if (typeof value === 'string') return change(value);
  if (Array.isArray(value)) return value.map((one) => withTexts(one, change));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, withTexts(one, change)]));
}
