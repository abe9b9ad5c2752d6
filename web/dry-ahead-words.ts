// When the air is expected to get too dry, in words. Pure; an estimate, and said to be one.
import type { ChamberView } from '../shared/api/chambers.ts';
import { humidityText } from './quantities.ts';
import { words } from './strings.ts';
import { clockTime } from './when.ts';

/** The sentence; null while dryness is not likely, not known, or its time cannot be told. */
export function dryAheadWords(ahead: ChamberView['dryAhead'], zone: string): string | null {
  if (ahead === null || ahead.at === null) return null;
  const limit = humidityText(ahead.limit);
  const clock = (at: string) => clockTime(Date.parse(at), zone);
  if (ahead.earliest === null || ahead.latest === null) return words.certainty.dryAhead(limit, clock(ahead.at));
  return words.certainty.dryAheadBetween(limit, clock(ahead.earliest), clock(ahead.latest));
}
