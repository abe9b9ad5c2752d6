import { describe, expect, test } from 'vitest';
import { buildNoticeMessage, buildTestMessage } from '../../../server/notify/notice-message.ts';
import type { Alarm, RuleId } from '../../../shared/alarms/alarm.ts';
import type { Language } from '../../../shared/languages.ts';
import { wordsOf } from '../../../shared/words/words-of.ts';
import { SAMPLE_MS, sampleAlarm, sampleFacts, sampleNotice, sampleOccasion } from '../../support/notice-samples.ts';

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

function messageOf(alarm: Partial<Alarm>, notice: Partial<typeof sampleNotice> = {}, nowMs = SAMPLE_MS) {
  const facts = { ...sampleFacts, alarm: { ...sampleAlarm, ...alarm } };
  return buildNoticeMessage({ ...sampleNotice, ...notice }, facts, { ...sampleOccasion, nowMs });
}

const over = { level: 0, state: 'returned-unacknowledged', returnedMs: SAMPLE_MS + 8 * MINUTE_MS } as const;

test('a raised notice says where, what and how far in its title, and since when and what to do first below', () => {
  const message = messageOf({});
  expect(message.title).toBe('▲ Chamber 2: hot 29.1 °C');
  expect(message.body.split('\n')).toEqual([
    'Limit 28 for 4 min, since 13:00.',
    'Batch T-117.',
    'First: Shade now. Open the gap a hand’s width and mist the film.',
  ]);
});

describe('the title of every rule is readable on a locked screen', () => {
  const standing: [RuleId, Partial<Alarm>, string][] = [
    ['heat', { value: 29.1 }, '▲ Chamber 2: hot 29.1 °C'],
    ['cold', { value: 16 }, '▼ Chamber 2: cold 16.0 °C'],
    ['dry', { value: 81.6 }, '▽ Chamber 2: drying 82 %'],
    ['wet', { value: 97 }, '△ Chamber 2: still wet 97 %'],
    ['silent-probe', { value: null }, '□ Chamber 2: probe silent for 4 min'],
    ['silent-chamber', { value: null }, '■ Chamber 2: no temperature to trust for 4 min'],
  ];
  test.each(standing)('%s while it stands', (rule, alarm, title) => {
    expect(messageOf({ rule, ...alarm }).title).toBe(title);
  });
  const ended: [RuleId, string][] = [
    ['heat', '▲ Chamber 2: heat is over'],
    ['cold', '▼ Chamber 2: cold is over'],
    ['dry', '▽ Chamber 2: dryness is over'],
    ['wet', '△ Chamber 2: wetness is over'],
    ['silent-probe', '□ Chamber 2: probe silence is over'],
    ['silent-chamber', '■ Chamber 2: chamber silence is over'],
  ];
  test.each(ended)('%s once it is over', (rule, title) => {
    expect(messageOf({ ...over, rule }, { kind: 'returned' }, over.returnedMs).title).toBe(title);
  });
});

test('a returned notice says that it is over and how long it lasted, and gives no advice any more', () => {
  const { body } = messageOf(over, { kind: 'returned', decidedMs: over.returnedMs }, over.returnedMs);
  expect(body).toBe('It lasted 12 min, 29.4 °C at worst. Over since 13:12.\nBatch T-117.');
});

test('a raised notice that is told after the alarm has ended says the present state, not the old one', () => {
  const message = messageOf(over, {}, over.returnedMs);
  expect(message.title).toBe('▲ Chamber 2: heat is over');
  expect(message.body).toContain('It lasted 12 min');
});

test('an escalated notice says that it got worse', () => {
  expect(messageOf({ level: 2, limit: 29 }, { kind: 'escalated' }).body).toContain(
    'It got worse. Above 29; hot for 4 min',
  );
});

test('an alarm that somebody has taken meanwhile says so', () => {
  expect(messageOf({ state: 'acknowledged' }).body).toContain('Somebody has it.');
});

test('a notice about one probe names the probe', () => {
  const facts = { ...sampleFacts, probeName: 'canopy-1', alarm: { ...sampleAlarm, rule: 'silent-probe' as const } };
  expect(buildNoticeMessage(sampleNotice, facts, sampleOccasion).body).toContain('Probe canopy-1. Batch T-117.');
});

describe('told late', () => {
  test.each([
    ['at 15 min it is still news', 15 * MINUTE_MS, false],
    ['a millisecond later it says so', 15 * MINUTE_MS + 1, true],
  ])('%s', (_, lateMs, isLate) => {
    const message = messageOf({}, {}, SAMPLE_MS + lateMs);
    expect(message.toldLate).toBe(isLate);
    expect(message.body.includes('Told late: decided at 13:04, 15 min ago.')).toBe(isLate);
  });

  test('from two hours on it is told in hours', () => {
    expect(messageOf({}, {}, SAMPLE_MS + 125 * MINUTE_MS).body).toContain(
      'Told late: decided at 13:04, 2 h 5 min ago.',
    );
  });

  test('a moment of another day is told with its day', () => {
    const nowMs = SAMPLE_MS + 11 * HOUR_MS;
    expect(messageOf({}, {}, nowMs).body).toContain('since Sun 2026-03-01 13:00.');
  });
});

describe('how long a push service keeps it', () => {
  test.each([
    ['just decided: six hours', 0, 6 * 3600],
    ['an hour later: the five that are left', HOUR_MS, 5 * 3600],
    ['at the end still a minute', 6 * HOUR_MS, 60],
    ['decided by a clock that was ahead: six hours, not more', -HOUR_MS, 6 * 3600],
  ])('%s', (_, ageMs, seconds) => {
    expect(messageOf({}, {}, SAMPLE_MS + ageMs).ttlSeconds).toBe(seconds);
  });
});

test('the link opens the alarm on the page of its chamber', () => {
  expect(messageOf({}).url).toBe('https://takewell.example/chambers/c2?alarm=c2.heat.mm7');
});

test('a test message says that nothing is wrong and belongs to no alarm', () => {
  const message = buildTestMessage(sampleOccasion, 'phone-1');
  expect(message).toMatchObject({ kind: 'test', title: 'Test from Takewell', facts: null, toldLate: false });
  expect(message.url).toBe('https://takewell.example/my-alerts');
});

describe('what else is wrong in the chamber', () => {
  const dry = { ...sampleAlarm, id: 'c2.dry.mm7', rule: 'dry', value: 81.6, limit: 90 } as const;
  const late = { ...sampleAlarm, id: 'c2.cold.mm7', rule: 'cold', value: 16, limit: 18 } as const;
  const probe = { ...sampleAlarm, id: 'c2.silent.mm7', rule: 'silent-probe', value: null } as const;
  const bodyTo = (language: Language, temperatureUnit: '°C' | '°F', alsoHere: readonly Alarm[]) =>
    buildNoticeMessage(
      sampleNotice,
      { ...sampleFacts, alsoHere },
      { ...sampleOccasion, saying: { words: wordsOf[language], temperatureUnit } },
    ).body.split('\n');

  test.each([
    ['en', '°C', 'Also here: drying 82 %, cold 16.0 °C.'],
    ['nl', '°F', 'Ook hier: droogt uit 82 %, koud 60,8 °F.'],
    ['es', '°C', 'También aquí: se seca 82 %, frío 16,0 °C.'],
  ] as const)('is said in %s and %s', (language, unit, line) => {
    expect(bodyTo(language, unit, [dry, late])).toContain(line);
  });

  test('names three and counts the rest, so that what to do first stays on the screen', () => {
    expect(bodyTo('en', '°C', [dry, late, probe, { ...dry, id: 'c2.wet.mm7', rule: 'wet' }])).toContain(
      'Also here: drying 82 %, cold 16.0 °C, probe silent for 4 min and 1 more.',
    );
  });
});
