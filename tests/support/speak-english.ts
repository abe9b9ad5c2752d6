// Before every test file: parts of the page that are tried without a browser speak English and °C, as a page does whose reader asked for nothing else,
// whatever the file before has left.
import { speakLate } from '../../web/late-strings.ts';
import { speak } from '../../web/strings.ts';
import { temperatureUnit } from '../../web/temperature-unit.ts';
import { english } from './page-words.ts';

speak(english);
speakLate(english);
temperatureUnit.value = '°C';
