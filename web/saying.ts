// How the sentences that service and page have in common are said to the reader of this page.
import type { Saying } from '../shared/saying.ts';
import { words } from './strings.ts';
import { temperatureUnit } from './temperature-unit.ts';

/** The reader's words and unit. Read while drawing, so that a change of the unit is seen. */
export function saying(): Saying {
  return { words: words.shared, temperatureUnit: temperatureUnit.value };
}
