// A text of a plan as its reader is told it: question, advice, name, crop and source of the shipped profiles in the reader's language and unit.
import { sayStandardText } from '../shared/healing/say-standard-text.ts';
import { saying } from './saying.ts';

/** What somebody wrote himself stands as it was written. Read while drawing, as `saying` is. */
export function planText(text: string): string {
  return sayStandardText(text, saying());
}
