// The service's sentences as the page shows them.
import { afterEach, describe, expect, test } from 'vitest';
import { alarmSentence } from '../../web/alarm-sentence.ts';
import { words } from '../../web/strings.ts';
import { temperatureUnit } from '../../web/temperature-unit.ts';
import { sampleAlarm } from './chamber-samples.ts';
import { spaced } from './plain-text.ts';

afterEach(() => {
  temperatureUnit.value = '°C';
});

const shown = (rule: Parameters<typeof alarmSentence>[0]['rule'], sentence: string) =>
  spaced(alarmSentence(sampleAlarm({ rule, sentence })));

test('the shape at the beginning is left to the page', () => {
  expect(shown('heat', '▲ Hot: 28.6 °C, limit 28 for 4 min')).toBe('Hot: 28.6 °C, limit 28 for 4 min');
  expect(shown('heat', 'Hot: 28.6 °C')).toBe('Hot: 28.6 °C');
});

test('a number stays on the line of its unit', () => {
  expect(alarmSentence(sampleAlarm({ sentence: '▲ Hot: 28.6 °C, limit 28 for 4 min' }))).toBe(
    'Hot: 28.6\u00a0°C, limit 28 for 4\u00a0min',
  );
});

describe('at a site in °F every temperature of the sentence is in °F', () => {
  test.each([
    ['heat', '▲ Hot: 28.6 °C, limit 28 for 4 min', 'Hot: 83.5 °F, limit 82.4 for 4 min'],
    ['heat', '▲ Far too hot: 30.3 °C, above 29; hot for 3 min', 'Far too hot: 86.5 °F, above 84.2; hot for 3 min'],
    ['cold', '▼ Cold: 18.0 °C, low limit 20 for 12 min', 'Cold: 64.4 °F, low limit 68 for 12 min'],
    ['cold', '▼ Cold: -2.5 °C, low limit 20 for 12 min', 'Cold: 27.5 °F, low limit 68 for 12 min'],
    ['heat', '▲ Heat is over: it lasted 10 min, 31.9 °C at worst', 'Heat is over: it lasted 10 min, 89.4 °F at worst'],
    [
      'heat-ahead',
      '↑ Heat ahead: 26.0 °C, reaches 28 °C in about 12 min (8–20)',
      'Heat ahead: 78.8 °F, reaches 82.4 °F in about 12 min (8–20)',
    ],
    ['dry', '▽ Drying: 84 %, low limit 90 for 6 min', 'Drying: 84 %, low limit 90 for 6 min'],
    ['silent-probe', '□ Probe silent for 16 min', 'Probe silent for 16 min'],
  ] as const)('%s: %s', (rule, sentence, said) => {
    temperatureUnit.value = '°F';
    expect(shown(rule, sentence)).toBe(said);
  });
});

describe('the summary of alarms counts what there is and no zero', () => {
  test.each([
    [2, 0, '2 not acknowledged.'],
    [0, 1, '1 acknowledged or shelved.'],
    [2, 1, '2 not acknowledged, 1 acknowledged or shelved.'],
  ])('%i open, %i taken: %s', (open, taken, said) => {
    expect(words.alarms.summary(open, taken)).toBe(said);
  });
});
