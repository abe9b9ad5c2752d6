// How things are said to the log, the operator's commands and machines. Apart from saying.ts, so that a page carries no language it does not speak.
import type { ServiceSaying } from './saying.ts';
import { english } from './words/en/english.ts';

export const plainEnglish: ServiceSaying = { words: english, temperatureUnit: '°C' };
