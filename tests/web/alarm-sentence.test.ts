// An alarm as the page says it.
import { afterEach, describe, expect, test } from 'vitest';
import type { AlarmView } from '../../shared/api/alarms.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import { alarmAdvice, alarmSentence } from '../../web/alarm-sentence.ts';
import { speak, words } from '../../web/strings.ts';
import { temperatureUnit } from '../../web/temperature-unit.ts';
import { dutch, english } from '../support/page-words.ts';
import { sampleAlarm, sampleNow } from './chamber-samples.ts';
import { spaced } from './plain-text.ts';

afterEach(() => {
  temperatureUnit.value = '°C';
  speak(english);
});

const nowMs = Date.parse(sampleNow) + 4 * MINUTE_MS;
const shown = (patch: Partial<AlarmView>) => spaced(alarmSentence(sampleAlarm(patch), nowMs));

test('it is said without its shape, which the page draws itself', () => {
  expect(shown({})).toBe('Hot: 28.6 °C, limit 28 for 4 min');
});

test('a number stays on the line of its unit', () => {
  expect(alarmSentence(sampleAlarm(), nowMs)).toBe('Hot: 28.6\u00a0°C, limit 28 for 4\u00a0min');
});

test('an alarm about a check asks what the check asks, and advises what it advises', () => {
  const alarm = sampleAlarm({ rule: 'check-failed', about: { id: 'a', question: 'Is it wet?', ifNo: 'Wet it.' } });
  expect(spaced(alarmSentence(alarm, nowMs))).toBe('Check answered no, 4 min ago: “Is it wet?”');
  expect(alarmAdvice(alarm)).toBe('Wet it.');
});

test('what is over needs no advice, what happened at an instant still does', () => {
  expect(alarmAdvice(sampleAlarm({ level: 0, returnedAt: '2026-03-04T12:10:00Z' }))).toBe('');
  expect(alarmAdvice(sampleAlarm({ rule: 'restarted', level: 0 }))).not.toBe('');
});

describe('to a reader in °F every temperature of the sentence is in °F', () => {
  const expected = {
    at: '2026-03-04T12:16:00Z',
    earliest: '2026-03-04T12:12:00Z',
    latest: '2026-03-04T12:24:00Z',
    passed: null,
  };
  test.each<[Partial<AlarmView>, string]>([
    [{}, 'Hot: 83.5 °F, limit 82.4 for 4 min'],
    [{ level: 2, value: 30.3, limit: 29 }, 'Far too hot: 86.5 °F, above 84.2; hot for 4 min'],
    [{ rule: 'cold', value: -2.5, limit: 20 }, 'Cold: 27.5 °F, low limit 68 for 4 min'],
    [{ level: 0, peak: 31.9, returnedAt: '2026-03-04T12:10:00Z' }, 'Heat is over: it lasted 10 min, 89.4 °F at worst'],
    [
      { rule: 'heat-ahead', value: 26, limit: 28, expected },
      'Heat ahead: 78.8 °F, reaches 82.4 °F in about 12 min (8–20)',
    ],
    [
      { rule: 'heat-ahead', value: 28.6, limit: 28, expected: { ...expected, passed: '2026-03-04T12:02:00Z' } },
      'Heat has come: 83.5 °F, above 82.4 °F for 2 min',
    ],
    [{ rule: 'dry', value: 84, limit: 90 }, 'Drying: 84 %, low limit 90 for 4 min'],
  ])('%j: %s', (patch, said) => {
    temperatureUnit.value = '°F';
    expect(shown(patch)).toBe(said);
  });
});

test('a page in another language says it in that', () => {
  speak(dutch);
  expect(shown({})).toBe('Heet: 28,6 °C, grens 28, al 4 min');
  expect(alarmAdvice(sampleAlarm())).toBe(dutch.shared.alarms.advice.heat);
});

describe('an alarm of the service itself is said from its facts', () => {
  const place = { chamberId: 'c1', chamberName: 'Tent 1', batchCode: 'T-1' };
  const facts = { trouble: null, finding: null, blind: [], outage: null };
  const lost = { key: 'brokerLost', args: ['mqtt://b'] };
  const outage = {
    cause: 'stopped' as const,
    from: '2026-03-04T10:00:00Z',
    to: '2026-03-04T12:00:00Z',
    chambers: [{ ...place, minutesHot: 14, high: 28, minutesDry: 0, low: 90, minutesUnknown: 0 }],
    inForce: [],
  };
  test.each<[Partial<AlarmView>, en: string, nl: string]>([
    [
      { rule: 'broker-lost', service: { ...facts, blind: [place] } },
      'No readings come in, for 4 min. Not measured: Tent 1 (T-1)',
      'Er komen geen metingen binnen, al 4 min. Niet gemeten: Tent 1 (T-1)',
    ],
    [
      { rule: 'broker-lost', service: { ...facts, trouble: 'the broker mqtt://b is not reached', finding: lost } },
      'No readings come in, for 4 min: the broker mqtt://b is not reached',
      'Er komen geen metingen binnen, al 4 min: de broker mqtt://b is niet bereikbaar',
    ],
    // What this page knows no text for, and what was stored before findings were kept as such, is shown as it is.
    [
      { rule: 'broker-lost', service: { ...facts, trouble: 'new trouble', finding: { key: 'later', args: [] } } },
      'No readings come in, for 4 min: new trouble',
      'Er komen geen metingen binnen, al 4 min: new trouble',
    ],
    [
      { rule: 'nobody-on-duty', level: 2, service: null },
      'Nobody is on duty, for 4 min',
      'Niemand heeft dienst, al 4 min',
    ],
    [
      { rule: 'restarted', service: { ...facts, outage } },
      'Back after 2 h 0 min; Tent 1 was above 28 °C for 14 min',
      'Terug na 2 u 0 min; Tent 1 was boven 28 °C gedurende 14 min',
    ],
  ])('%j', (patch, en, nl) => {
    const alarm = { ...patch, sentence: '✕ In English' };
    expect(shown(alarm)).toContain(en);
    speak(dutch);
    expect(shown(alarm)).toContain(nl);
  });
});

describe('the summary of alarms counts what there is and no zero', () => {
  test.each([
    [2, 0, 0, '2 not acknowledged.'],
    [0, 1, 0, '1 acknowledged or shelved.'],
    [0, 0, 1, '1 quiet for now.'],
    [2, 1, 3, '2 not acknowledged, 1 acknowledged or shelved, 3 quiet for now.'],
  ])('%i open, %i taken, %i quiet: %s', (open, taken, quiet, said) => {
    expect(words.alarms.summary(open, taken, quiet)).toBe(said);
  });
});
