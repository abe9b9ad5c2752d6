import { describe, expect, it } from 'vitest';
import { type Alarm, type RuleId, ruleIds } from '../../../shared/alarms/alarm.ts';
import { adviseOn, adviseOnAlarm, nameRule, sayAlarm } from '../../../shared/alarms/say-alarm.ts';
import { plainEnglish } from '../../../shared/plain-english.ts';
import { HOUR_MS, MINUTE_MS, SECOND_MS } from '../../../shared/units.ts';
import { NOON_MS } from './scenes.ts';

const hot: Alarm = {
  id: 'tent-1.heat.1',
  chamberId: 'tent-1',
  batchId: 'batch-1',
  rule: 'heat',
  probeId: null,
  state: 'unacknowledged',
  level: 1,
  priority: 'high',
  sinceMs: NOON_MS,
  occurredMs: NOON_MS + MINUTE_MS,
  limit: 28,
  value: 28.6,
  peak: 28.9,
  peakMs: NOON_MS + MINUTE_MS,
  acknowledgedMs: null,
  acknowledgedBy: null,
  returnedMs: null,
  shelvedUntilMs: null,
  shelvedReason: null,
};

const nothingMeasured = { value: null, limit: null, peak: null, peakMs: null };
const about = { id: 'film-wet', question: 'Is the film wet?', ifNo: 'Wet it.' };
const over = { level: 0, state: 'returned-unacknowledged', returnedMs: NOON_MS + 10 * MINUTE_MS } as const;

function say(change: Partial<Alarm>, afterMs = 4 * MINUTE_MS): string {
  return sayAlarm({ ...hot, ...change }, NOON_MS + afterMs, plainEnglish);
}

describe('an alarm that stands', () => {
  it.each<[RuleId, Partial<Alarm>, string]>([
    ['heat', {}, '▲ Hot: 28.6 °C, limit 28 for 4 min'],
    ['cold', { value: 15.96, limit: 16 }, '▼ Cold: 16.0 °C, low limit 16 for 4 min'],
    ['dry', { value: 81.6, limit: 85 }, '▽ Drying: 82 %, low limit 85 for 4 min'],
    ['wet', { value: 97, limit: 92.5 }, '△ Still wet: 97 %, high limit 92.5 for 4 min'],
    ['silent-probe', { ...nothingMeasured, limit: 15 }, '□ Probe silent for 4 min'],
    ['silent-chamber', nothingMeasured, '■ No temperature to trust for 4 min'],
    ['vpd', { value: 0.924, limit: 0.76 }, '◇ Air draws too much water: 0.92 kPa, limit 0.76 kPa for 4 min'],
    ['suspect-probe', nothingMeasured, '◧ Probe in doubt, for 4 min'],
    ['check-overdue', { ...nothingMeasured, about }, '○ Check overdue, for 4 min: “Is the film wet?”'],
    ['check-failed', { ...nothingMeasured, about }, '● Check answered no, 4 min ago: “Is the film wet?”'],
    ['plan-late', { value: 98.4, limit: 95 }, '▷ Venting is late: still 98 %, limit 95 for 4 min'],
  ])('%s says what, how far and for how long', (rule, change, sentence) => {
    expect(say({ rule, ...change })).toBe(sentence);
  });

  it.each<[RuleId, Partial<Alarm>, string]>([
    ['heat', { value: 30.2, limit: 29 }, '▲ Far too hot: 30.2 °C, above 29; hot for 4 min'],
    ['dry', { value: 78.6, limit: 80 }, '▽ Far too dry: 79 %, below 80; drying for 4 min'],
    ['cold', { value: 14, limit: 16 }, '▼ Cold: 14.0 °C, low limit 16 for 4 min'],
    ['wet', { value: 99, limit: 98 }, '△ Still wet: 99 %, high limit 98 for 4 min'],
    ['suspect-probe', { value: 41.26 }, '◧ Probe in doubt: it says 41.3 °C, not believed for 4 min'],
    ['check-failed', { ...nothingMeasured, about }, '● Check answered no, 4 min ago: “Is the film wet?”'],
  ])(
    '%s beyond its outer limit says so, without lending that limit the time of the first',
    (rule, change, sentence) => {
      expect(say({ rule, level: 2, ...change })).toBe(sentence);
    },
  );

  it.each<[RuleId, Partial<Alarm>, string]>([
    ['heat', { value: 27.9 }, '▲ Hot: 27.9 °C, back below 28 but not settled, 4 min so far'],
    [
      'heat',
      { level: 2, value: 28.4, limit: 29 },
      '▲ Far too hot: 28.4 °C, back below 29 but not settled, 4 min so far',
    ],
    ['cold', { value: 16.2, limit: 16 }, '▼ Cold: 16.2 °C, back above 16 but not settled, 4 min so far'],
    ['dry', { level: 2, value: 82, limit: 80 }, '▽ Far too dry: 82 %, back above 80 but not settled, 4 min so far'],
    ['wet', { value: 97, limit: 98 }, '△ Still wet: 97 %, back below 98 but not settled, 4 min so far'],
    [
      'vpd',
      { value: 0.7, limit: 0.76 },
      '◇ Air draws too much water: 0.70 kPa, back below 0.76 kPa but not settled, 4 min so far',
    ],
  ])('%s %j is not called outside while its value is back inside', (rule, change, sentence) => {
    expect(say({ rule, ...change })).toBe(sentence);
  });

  it('says a limit that house air has made uneven to a tenth', () => {
    expect(say({ limit: 27.333333 })).toContain('limit 27.3 for');
  });

  it('says so when a value or a limit is not known', () => {
    expect(say({ value: null, limit: null })).toBe('▲ Hot: not known, limit – for 4 min');
    expect(say({ rule: 'dry', value: null })).toContain('Drying: not known');
  });

  it.each([
    [29 * SECOND_MS, 'less than a minute'],
    [30 * SECOND_MS, '1 min'],
    [119 * MINUTE_MS, '119 min'],
    [2 * HOUR_MS, '2 h 0 min'],
    [26 * HOUR_MS + 5 * MINUTE_MS, '26 h 5 min'],
    [-5 * SECOND_MS, 'less than a minute'],
  ])('after %i ms it has lasted %s', (afterMs, text) => {
    expect(say({}, afterMs)).toBe(`▲ Hot: 28.6 °C, limit 28 for ${text}`);
  });
});

describe('an alarm that is over', () => {
  it.each<[RuleId, Partial<Alarm>, string]>([
    ['heat', {}, '▲ Heat is over: it lasted 10 min, 28.9 °C at worst'],
    ['cold', { peak: 15 }, '▼ Cold is over: it lasted 10 min, 15.0 °C at worst'],
    ['dry', { peak: 78.4 }, '▽ Dryness is over: it lasted 10 min, 78 % at worst'],
    ['wet', { peak: 99 }, '△ Wetness is over: it lasted 10 min, 99 % at worst'],
    ['silent-probe', nothingMeasured, '□ Probe silence is over: it lasted 10 min'],
    ['silent-chamber', nothingMeasured, '■ Chamber silence is over: it lasted 10 min'],
    ['vpd', { peak: 1.104 }, '◇ Vapour deficit is over: it lasted 10 min, 1.10 kPa at worst'],
    ['suspect-probe', { peak: 41.3 }, '◧ Probe doubt is over: it lasted 10 min, 41.3 °C at worst'],
    ['check-overdue', nothingMeasured, '○ Overdue check is over: it lasted 10 min'],
    ['check-failed', nothingMeasured, '● Bad check is over: it lasted 10 min'],
    ['plan-late', { peak: 99.2 }, '▷ Late venting is over: it lasted 10 min, 99 % at worst'],
  ])('%s says how long it lasted and how bad it was', (rule, change, sentence) => {
    expect(say({ rule, ...over, ...change }, HOUR_MS)).toBe(sentence);
  });

  it('lasts no longer the later it is read', () => {
    expect(say(over, HOUR_MS)).toBe(say(over, 100 * HOUR_MS));
  });
});

describe('every rule', () => {
  it.each(ruleIds)('%s has a name, a shape of its own and an advice that is a sentence', (rule) => {
    const shapes = ruleIds.map((one) => say({ rule: one })[0]);
    expect(new Set(shapes).size).toBe(ruleIds.length);
    expect(nameRule(rule, plainEnglish)).toMatch(/^[A-Z][a-z ]+$/);
    expect(adviseOn(rule, plainEnglish)).toMatch(/^[A-Z].+\.$/);
  });
});

describe('what to do first', () => {
  it('is what the plan says where a check was answered no, and the rule’s own advice otherwise', () => {
    expect(adviseOnAlarm({ ...hot, rule: 'check-failed', about }, plainEnglish)).toBe('Wet it.');
    expect(adviseOnAlarm({ ...hot, rule: 'check-failed' }, plainEnglish)).toBe(adviseOn('check-failed', plainEnglish));
    expect(adviseOnAlarm({ ...hot, rule: 'check-overdue', about }, plainEnglish)).toBe(
      adviseOn('check-overdue', plainEnglish),
    );
  });
});
