// Before every test file: parts of the page that are tried without a browser speak English, as a page does whose reader asked for nothing else.
import { speakLate } from '../../web/late-strings.ts';
import { speak } from '../../web/strings.ts';
import { english } from './page-words.ts';

speak(english);
speakLate(english);
