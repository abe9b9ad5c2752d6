// Heat ahead as a rule: when it warns, what it leaves to heat, and how its alarm leaves without asking anybody for anything.

import { describe, expect, it } from 'vitest';
import type { Level, RuleId } from '../../../../shared/alarms/alarm.ts';
import { heatAhead } from '../../../../shared/alarms/rules/heat-ahead.ts';
import type { Scene } from '../../../../shared/alarms/rules/rule.ts';
import { adviseOnAlarm, sayAlarm } from '../../../../shared/alarms/say-alarm.ts';
import type { Language } from '../../../../shared/languages.ts';
import { plainEnglish } from '../../../../shared/plain-english.ts';
import { MINUTE_MS, SECOND_MS } from '../../../../shared/units.ts';
import { wordsOf } from '../../../../shared/words/words-of.ts';
import { acknowledge, runWatch, shelve, told } from '../run-watch.ts';
import { climateOf, NOON_MS, sceneAt } from '../scenes.ts';

const expected = {
  atMs: NOON_MS + 12 * MINUTE_MS,
  earliestMs: NOON_MS + 8 * MINUTE_MS,
  latestMs: NOON_MS + 20 * MINUTE_MS,
};
const foretold = (chance: number, isSameHeat = false) => ({ chance, isSameHeat, expected: () => expected });
/** Air of this temperature with a chance of heat. */
const air = (temperature: number, chance: number): Partial<Scene> => ({
  climate: climateOf(temperature, 90),
  ahead: foretold(chance),
});

interface Row {
  readonly why: string;
  readonly scene: Partial<Scene>;
  readonly held: Level;
  readonly level: Level | 'unknown';
}

const rows: Row[] = [
  { why: 'an even chance is enough', scene: air(27, 0.45), held: 0, level: 1 },
  { why: 'a smaller one is not', scene: air(27, 0.44), held: 0, level: 0 },
  { why: 'a warning that stands goes on with a small one', scene: air(27, 0.1), held: 1, level: 1 },
  { why: 'and is over below that', scene: air(27, 0.09), held: 1, level: 0 },
  {
    why: 'the same heat needs no new warning',
    scene: { ...air(27, 0.9), ahead: foretold(0.9, true) },
    held: 0,
    level: 0,
  },
  { why: 'at the limit it may still come', scene: air(28, 0.9), held: 0, level: 1 },
  { why: 'beyond the limit none begins', scene: air(28.1, 1), held: 0, level: 0 },
  { why: 'beyond the limit one stands until heat takes over', scene: air(28.1, 1), held: 1, level: 1 },
  {
    why: 'without a climate nobody knows',
    scene: { ...air(27, 0.9), climate: climateOf(null, null) },
    held: 1,
    level: 'unknown',
  },
  { why: 'without a trend nobody knows', scene: { ...air(27, 0.9), ahead: null }, held: 1, level: 'unknown' },
  { why: 'without a batch there is nothing to lose', scene: { ...air(27, 0.9), corridor: null }, held: 0, level: 0 },
];

describe('the rule', () => {
  it.each(rows)('$why', ({ scene, held, level }) => {
    expect(heatAhead.judge(sceneAt(0, scene), () => held)).toMatchObject([{ level }]);
  });
});

describe('a warning', () => {
  it('comes at once, of medium priority, and says when', () => {
    const watch = runWatch();
    expect(told(watch.see(0, air(26.6, 0.6)))).toEqual(['heat-ahead occurred: normal → unacknowledged']);
    const alarm = watch.alarm('heat-ahead') ?? expect.fail();
    expect(alarm).toMatchObject({ priority: 'medium', value: 26.6, limit: 28, peak: 26.6, expected });
    expect(sayAlarm(alarm, NOON_MS, plainEnglish)).toBe('↑ Heat ahead: 26.6 °C, reaches 28 °C in about 12 min (8–20)');
    expect(sayAlarm(alarm, NOON_MS + 9 * MINUTE_MS, plainEnglish)).toBe(
      '↑ Heat ahead: 26.6 °C, reaches 28 °C in about 3 min (0–11)',
    );
    expect(sayAlarm(alarm, NOON_MS + 15 * MINUTE_MS, plainEnglish)).toBe(
      '↑ Heat ahead: 26.6 °C, reaches 28 °C any minute',
    );
  });

  it('says as much as is known where no time is', () => {
    const watch = runWatch();
    const none = { atMs: null, earliestMs: null, latestMs: null };
    watch.see(0, { climate: climateOf(26.6, 90), ahead: { ...foretold(0.46), expected: () => none } });
    expect(sayAlarm(watch.alarm('heat-ahead') ?? expect.fail(), NOON_MS, plainEnglish)).toBe(
      '↑ Heat ahead: 26.6 °C, may be past 28 °C in 20 min',
    );
  });

  it('is taken back after a quarter of an hour in which it was unlikely', () => {
    const watch = runWatch();
    watch.see(0, air(26.6, 0.6));
    expect(watch.see(MINUTE_MS, air(26.4, 0.05))).toEqual([]);
    expect(watch.see(16 * MINUTE_MS - 1, air(26.2, 0.02))).toEqual([]);
    expect(told(watch.see(16 * MINUTE_MS, air(26.2, 0.02)))).toEqual([
      'heat-ahead returned: unacknowledged → returned-unacknowledged',
    ]);
  });
});

describe('what it says when the limit is passed, and heat waits for its delay', () => {
  const said = (value: number, passedMs: number | null, language: Language) => {
    const watch = runWatch();
    watch.see(0, air(27.5, 0.9));
    const ahead = { ...foretold(1), expected: () => ({ ...expected, atMs: NOON_MS, passedMs }) };
    watch.see(MINUTE_MS, { climate: climateOf(value, 90), ahead });
    const alarm = watch.alarm('heat-ahead') ?? expect.fail();
    const saying = { words: wordsOf[language], temperatureUnit: '°C' } as const;
    return [sayAlarm(alarm, NOON_MS + MINUTE_MS, saying), adviseOnAlarm(alarm, saying)];
  };

  it.each<[string, number, number | null, Language, string, RuleId]>([
    ['at the limit it has not come', 28, null, 'en', '↑ Heat ahead: 28.0 °C, reaches 28 °C any minute', 'heat-ahead'],
    ['above it it has', 28.1, NOON_MS, 'en', '↑ Heat has come: 28.1 °C, above 28 °C for 1 min', 'heat'],
    ['nobody saw when', 28.1, null, 'en', '↑ Heat has come: 28.1 °C, above 28 °C already', 'heat'],
    ['in Dutch', 28.6, NOON_MS, 'nl', '↑ De hitte is er: 28,6 °C, al 1 min boven 28 °C', 'heat'],
    ['in Dutch, nobody saw when', 28.6, null, 'nl', '↑ De hitte is er: 28,6 °C, al boven 28 °C', 'heat'],
    ['in Spanish', 28.6, NOON_MS, 'es', '↑ Ya hace calor: 28,6 °C, por encima de 28 °C desde hace 1 min', 'heat'],
    ['in Spanish, nobody saw when', 28.6, null, 'es', '↑ Ya hace calor: 28,6 °C, ya por encima de 28 °C', 'heat'],
  ])('%s', (_why, value, passedMs, language, sentence, advised) => {
    expect(said(value, passedMs, language)).toEqual([sentence, wordsOf[language].alarms.advice[advised]]);
  });
});

describe('when heat itself stands', () => {
  /** Warned at noon, beyond the limit a minute later. */
  function warned() {
    const watch = runWatch();
    watch.see(0, air(27.5, 0.9));
    watch.see(MINUTE_MS, air(28.2, 1));
    return watch;
  }

  it('a warning stands until then, and goes with it', () => {
    const watch = warned();
    expect(watch.alarm('heat-ahead')).toMatchObject({ state: 'unacknowledged' });
    expect(told(watch.see(2 * MINUTE_MS, air(28.3, 1)))).toContain('heat occurred: normal → unacknowledged');
    const gone = watch.see(2 * MINUTE_MS + 5 * SECOND_MS, air(28.3, 1));
    expect(told(gone)).toEqual(['heat-ahead suppressed: unacknowledged → normal']);
    expect(gone[0]?.alarm).toMatchObject({ level: 0, returnedMs: NOON_MS + 2 * MINUTE_MS + 5 * SECOND_MS });
    expect(watch.alarm('heat-ahead')).toBeNull();
  });

  it('goes too when somebody has acknowledged it, and stays on its shelf when it is shelved', () => {
    const [taken, shelved] = [warned(), warned()];
    taken.take(acknowledge(taken.alarm('heat-ahead') ?? expect.fail(), MINUTE_MS));
    shelved.take(shelve(shelved.alarm('heat-ahead') ?? expect.fail(), MINUTE_MS, 60 * MINUTE_MS));
    for (const watch of [taken, shelved]) for (const afterMs of [2, 3]) watch.see(afterMs * MINUTE_MS, air(28.3, 1));
    expect(taken.alarm('heat-ahead')).toBeNull();
    expect(shelved.alarm('heat-ahead')).toMatchObject({ state: 'shelved', level: 0 });
  });

  it('none begins, however likely', () => {
    const watch = warned();
    for (const afterMs of [2, 3, 4, 5]) watch.see(afterMs * MINUTE_MS, air(28.3, 1));
    // Inside by less than the deadband: heat stands still.
    expect(watch.see(6 * MINUTE_MS, air(27.8, 0.9))).toEqual([]);
    expect(watch.alarm('heat')).not.toBeNull();
  });
});
