// How things are said to the log, the operator's commands and machines. Apart from saying.ts, so that a page carries no language it does not speak.
import type { Saying } from './saying.ts';
import { english } from './words/en/english.ts';

export const plainEnglish: Saying = { words: english, temperatureUnit: '°C' };
