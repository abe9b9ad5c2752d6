// Every text of the page in each language: those of the start and those of the late pages together, as a late page has them.
import type { Words } from '../../web/late-strings.ts';
import { english as coreEnglish } from '../../web/words/en/english.ts';
import { lateEnglish } from '../../web/words/en/late-english.ts';
import { lateSpanish } from '../../web/words/es/late-spanish.ts';
import { spanish as coreSpanish } from '../../web/words/es/spanish.ts';
import { dutch as coreDutch } from '../../web/words/nl/dutch.ts';
import { lateDutch } from '../../web/words/nl/late-dutch.ts';

export const english: Words = { ...coreEnglish, ...lateEnglish };
export const dutch: Words = { ...coreDutch, ...lateDutch };
export const spanish: Words = { ...coreSpanish, ...lateSpanish };
