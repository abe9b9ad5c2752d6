// An alarm and the checks of a shipped profile, to people of three languages and two units.
import { describe, expect, it } from 'vitest';
import type { SaidAlarm } from '../../shared/alarms/say-alarm.ts';
import { adviseOnAlarm, sayAlarm } from '../../shared/alarms/say-alarm.ts';
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { sayStandardText } from '../../shared/healing/say-standard-text.ts';
import { standardProfiles } from '../../shared/healing/standard-profiles.ts';
import type { Saying } from '../../shared/saying.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import { wordsOf } from '../../shared/words/words-of.ts';

const dutch: Saying = { words: wordsOf.nl, temperatureUnit: '°C' };
const spanish: Saying = { words: wordsOf.es, temperatureUnit: '°C' };
const fahrenheit: Saying = { words: wordsOf.en, temperatureUnit: '°F' };

const hot: SaidAlarm = { rule: 'heat', level: 1, limit: 28, value: 28.6, peak: 30.4, sinceMs: 0, returnedMs: null };

describe('an alarm', () => {
  it.each<{ saying: Saying; alarm: SaidAlarm; said: string }>([
    { saying: dutch, alarm: hot, said: '▲ Heet: 28,6 °C, grens 28, al 4 min' },
    { saying: spanish, alarm: hot, said: '▲ Calor: 28,6 °C, límite 28 desde hace 4 min' },
    { saying: fahrenheit, alarm: hot, said: '▲ Hot: 83.5 °F, limit 82.4 for 4 min' },
    {
      saying: { words: wordsOf.nl, temperatureUnit: '°F' },
      alarm: { ...hot, level: 0, returnedMs: 3 * MINUTE_MS },
      said: '▲ Hitte is voorbij: het duurde 3 min, op zijn ergst 86,7 °F',
    },
    {
      saying: fahrenheit,
      alarm: {
        ...hot,
        rule: 'heat-ahead',
        value: 26,
        expected: { atMs: 16 * MINUTE_MS, earliestMs: 12 * MINUTE_MS, latestMs: null },
      },
      said: '↑ Heat ahead: 78.8 °F, reaches 82.4 °F in about 12 min (8 or more)',
    },
    {
      saying: fahrenheit,
      alarm: { ...hot, rule: 'dry', value: 81.6, limit: 85 },
      said: '▽ Drying: 82 %, low limit 85 for 4 min',
    },
  ])('$said', ({ saying, alarm, said }) => {
    expect(sayAlarm(alarm, 4 * MINUTE_MS, saying)).toBe(said);
  });

  it('about a check of a shipped profile asks and advises in the same language', () => {
    const { question, ifNo } = wordsOf.en.checks.filmWet;
    const failed: SaidAlarm = { ...hot, rule: 'check-failed', about: { id: 'film-wet', question, ifNo } };
    expect(sayAlarm(failed, 4 * MINUTE_MS, dutch)).toContain(wordsOf.nl.checks.filmWet.question);
    const overdue: SaidAlarm = { ...failed, rule: 'check-overdue', about: { id: 'film-wet', question, ifNo, more: 2 } };
    expect(sayAlarm(overdue, 4 * MINUTE_MS, dutch)).toContain(`${wordsOf.nl.checks.filmWet.question} (en nog 2)`);
    expect(adviseOnAlarm(failed, dutch)).toBe(wordsOf.nl.checks.filmWet.ifNo);
  });
});

describe('the checks of the shipped profiles', () => {
  const texts = standardProfiles.flatMap(({ document }) =>
    document.checks.flatMap(({ question, ifNo }) => [question, ifNo]),
  );

  it.each([...new Set(texts)])('are said in every language: %s', (text) => {
    const said = [dutch, spanish].map((saying) => sayStandardText(text, saying));
    expect(new Set([text, ...said]).size).toBe(3);
    expect(sayStandardText(text, { words: wordsOf.en, temperatureUnit: '°C' })).toBe(text);
  });

  it.each([
    ...new Set(standardProfiles.flatMap(({ document }) => [document.name, document.crop, ...sourcesOf(document)])),
  ])('stand beside names, crops and sources that are said in every language: %s', (text) => {
    const said = [dutch, spanish].map((saying) => sayStandardText(text, saying));
    expect(new Set([text, ...said]).size).toBe(3);
    expect(sayStandardText(text, { words: wordsOf.en, temperatureUnit: '°C' })).toBe(text);
  });

  it('name the air in the reader’s unit', () => {
    const [ask = ''] = texts;
    expect(ask).toContain('21–22 °C');
    expect(sayStandardText(ask, fahrenheit)).toContain('70–72 °F and 80–90 %RH');
  });

  it('keep the words of whoever changed them', () => {
    expect(sayStandardText('Is the film dripping?', dutch)).toBe('Is the film dripping?');
  });
});

/** Where the limits and checks of a profile say they are from. */
function sourcesOf({ grace, stages, checks }: ProfileDocument): string[] {
  const limits = stages.flatMap(({ temperature, humidity, vpdKpa }) => [
    ...[temperature, humidity].flatMap(({ lowLow, low, high, highHigh }) => [lowLow, low, high, highHigh]),
    vpdKpa,
  ]);
  return [grace, ...limits, ...checks].flatMap((one) => one?.basis ?? []);
}
