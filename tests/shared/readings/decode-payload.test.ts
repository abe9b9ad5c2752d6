import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { languages } from '../../../shared/languages.ts';
import { decodePayload } from '../../../shared/readings/decode-payload.ts';
import { resolvePointer } from '../../../shared/readings/json-pointer.ts';
import { PAYLOAD_MAX_BYTES } from '../../../shared/readings/parse-payload.ts';
import { readReason } from '../../../shared/readings/read-reason.ts';
import type { Admission } from '../../../shared/readings/reading.ts';
import { sayRefusal } from '../../../shared/readings/say-refusal.ts';
import { wordsOf } from '../../../shared/words/words-of.ts';
import { ARRIVAL_MS, admit, decodeJson, decodeText, inEnglish, reading } from '../../support/readings.ts';

/** The same value in each form. */
function inBothForms(quantity: 'temperature' | 'humidity', value: number) {
  return [{ [quantity]: value }, [{ n: quantity, u: quantity === 'temperature' ? 'Cel' : '%RH', v: value }]];
}

function atTime(timeMs: number) {
  const seconds = timeMs / 1000;
  return [{ temperature: 21, time: seconds }, [{ n: 'temperature', u: 'Cel', v: 21, t: seconds }]];
}

describe('any payload', () => {
  /** Whatever came in, the answer must be usable as it is: sound numbers, reasons that can be kept and said, in each language its own way. */
  function expectSound({ admitted, refused }: Admission) {
    for (const { timeMs, temperature, humidity } of admitted) {
      expect(Number.isSafeInteger(timeMs)).toBe(true);
      expect(temperature === null && humidity === null).toBe(false);
      for (const value of [temperature, humidity]) expect(value === null || Number.isFinite(value)).toBe(true);
    }
    for (const { reason, where } of refused) {
      expect(readReason(JSON.parse(JSON.stringify(reason)))).toEqual(reason);
      const said = languages.map((language) => sayRefusal(reason, wordsOf[language]));
      for (const sentence of said) expect(sentence).toMatch(/^["\p{Lu}].{10,600}\.$/su);
      expect(new Set(said).size).toBe(languages.length);
      expect(where === '' || where.startsWith('/')).toBe(true);
    }
  }

  test('arbitrary bytes are answered', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => expectSound(admit(bytes))));
  });

  test('arbitrary JSON is answered', () => {
    fc.assert(
      fc.property(fc.json(), (text) => expectSound(admit(text))),
      { numRuns: 500 },
    );
  });

  const oddValue = fc.oneof(
    fc.jsonValue({ maxDepth: 1 }),
    fc.double(),
    fc.integer({ min: -100, max: 2_000_000_000 }),
    fc.constantFrom('Cel', '%RH', '/', 'temperature', 'humidity', 'a/humidity', '2026-03-02T07:00:00Z', 1e11, 21),
  );
  const keys = fc.constantFrom(
    ...['n', 'u', 'v', 't', 'vs', 's', 'bn', 'bt', 'bu', 'bv', 'bver', 'x_', 'bx_', '__proto__'],
    ...['temperature', 'humidity', 'time', 'probe', 'unit', 'toString'],
  );
  const element = fc.oneof({ weight: 9, arbitrary: fc.dictionary(keys, oddValue) }, { weight: 1, arbitrary: oddValue });

  test('payloads that nearly fit are answered, and every place exists in the payload or is one step beyond it', () => {
    fc.assert(
      fc.property(fc.oneof(element, fc.array(element, { maxLength: 6 })), (value) => {
        const text = JSON.stringify(value);
        const admission = admit(text);
        expectSound(admission);
        for (const { where } of admission.refused) {
          expect(resolvePointer(JSON.parse(text), where.replace(/\/[^/]*$/, ''))).toBeDefined();
        }
      }),
      { numRuns: 2000 },
    );
  });

  test.each([
    { text: '['.repeat(500_000), why: 'a deep list that never ends' },
    { text: `${'['.repeat(400_000)}${']'.repeat(400_000)}`, why: 'a deep list' },
    { text: `{"temperature":${'['.repeat(200_000)}${']'.repeat(200_000)}}`, why: 'a deep list for a value' },
  ])('$why is refused without a fall', ({ text }) => {
    expect(decodeText(text)).toMatchObject({ admitted: [], refused: [{ reason: expect.any(String) }] });
  });
});

describe('the message as a whole', () => {
  test.each([
    { bytes: [], says: 'empty', why: 'nothing' },
    { bytes: [0x7b, 0xff, 0x7d], says: 'not UTF-8', why: 'a byte that is not UTF-8' },
    { bytes: [0xc0, 0xaf], says: 'not UTF-8', why: 'an overlong form' },
  ])('$why is refused', ({ bytes, says }) => {
    expect(inEnglish(admit(new Uint8Array(bytes)))).toEqual({
      admitted: [],
      refused: [{ reason: expect.stringContaining(says), where: '' }],
    });
  });

  test.each([
    { text: '{"temperature":21', says: 'not JSON', why: 'cut short' },
    { text: 'temperature=21', says: 'not JSON', why: 'another format' },
    { text: "{'temperature':21}", says: 'not JSON', why: 'the wrong quotes' },
    { text: '{"temperature":nan,"humidity":93}', says: '"nan"', why: 'how boards print a missing value' },
    { text: '{"temperature": NaN}', says: '"nan"', why: 'how scripts print it' },
    { text: '[{"n":"temperature","u":"Cel","v":-nan}]', says: '"nan"', why: 'with a sign' },
  ])('$text is refused: $why', ({ text, says }) => {
    expect(decodeText(text)).toEqual({ admitted: [], refused: [{ reason: expect.stringContaining(says), where: '' }] });
  });

  test('a byte order mark is skipped', () => {
    expect(decodeText('\uFEFF{"temperature":21}').admitted).toEqual([reading({ temperature: 21 })]);
  });

  test.each([
    { bytes: PAYLOAD_MAX_BYTES, refused: 0, why: 'exactly 1 MiB' },
    { bytes: PAYLOAD_MAX_BYTES + 1, refused: 1, why: 'one byte more' },
  ])('$why: $refused refused', ({ bytes, refused }) => {
    const text = '{"temperature":21}'.padEnd(bytes);
    expect(decodeText(text).refused).toHaveLength(refused);
  });

  test('one that is too large is told how to split it', () => {
    expect(decodeText(' '.repeat(1_048_577)).refused).toEqual([
      {
        reason: 'The message is larger than 1 MiB; split the buffer into packs of at most 10,000 readings.',
        where: '',
      },
    ]);
  });

  test.each([
    { value: [{ v: 21 }], form: 'SenML', where: '/0', says: 'no name' },
    { value: [{ bt: 5, x: 1 }, { temperature: 21 }], form: 'plain', where: '/0', says: 'neither' },
    { value: [{ x: 1 }], form: 'plain', where: '/0', says: 'neither' },
    { value: [{ t: 21, h: 93 }], form: 'plain', where: '/0', says: 'neither' },
  ])('$value is taken for $form', ({ value, where, says }) => {
    expect(decodeJson(value).refused).toEqual([{ reason: expect.stringContaining(says), where }]);
  });
});

describe('rules for every form', () => {
  test.each([
    { quantity: 'temperature', value: -60, admitted: 1 },
    { quantity: 'temperature', value: -60.1, admitted: 0 },
    { quantity: 'temperature', value: 100, admitted: 1 },
    { quantity: 'temperature', value: 100.1, admitted: 0 },
    { quantity: 'humidity', value: 0, admitted: 1 },
    { quantity: 'humidity', value: -0.1, admitted: 0 },
    { quantity: 'humidity', value: 104, admitted: 1 },
    { quantity: 'humidity', value: 110, admitted: 1 },
    { quantity: 'humidity', value: 110.1, admitted: 0 },
  ] as const)('a $quantity of $value: $admitted admitted', ({ quantity, value, admitted }) => {
    for (const payload of inBothForms(quantity, value)) {
      const admission = decodeJson(payload);
      expect(admission.admitted).toHaveLength(admitted);
      if (admitted === 0) expect(admission.refused[0]?.reason).toContain(`A ${quantity} of ${value} `);
    }
  });

  test.each([
    { timeMs: ARRIVAL_MS + 300_000, admitted: 1, why: 'five minutes ahead are let in: clocks differ' },
    { timeMs: ARRIVAL_MS - 300 * 86_400_000, admitted: 1, why: 'late is late, not wrong' },
    { timeMs: Date.parse('2010-01-01T00:00:00Z'), admitted: 1, why: 'the oldest date a clock can mean' },
  ])('$why', ({ timeMs, admitted }) => {
    for (const payload of atTime(timeMs)) expect(decodeJson(payload).admitted).toHaveLength(admitted);
  });

  test.each([
    { timeMs: ARRIVAL_MS + 300_001, says: "5 min ahead of its arrival; set the node's clock" },
    { timeMs: ARRIVAL_MS + 2 * 3_600_000, says: 'dated 2 h ahead' },
    { timeMs: ARRIVAL_MS + 90 * 60_000, says: 'dated 1.5 h ahead' },
    { timeMs: ARRIVAL_MS + 30 * 86_400_000, says: 'dated 30 days ahead' },
    { timeMs: ARRIVAL_MS * 1000, says: 'send seconds since 1970, not milliseconds' },
    { timeMs: Date.parse('2009-12-31T23:59:59Z'), says: "before 2010, so the node's clock was never set" },
  ])('a reading dated $timeMs is refused: $says', ({ timeMs, says }) => {
    for (const payload of atTime(timeMs)) {
      expect(decodeJson(payload)).toMatchObject({ admitted: [], refused: [{ reason: expect.stringContaining(says) }] });
    }
  });

  test('where the receiving clock was never set either, the node’s date is not judged by it', () => {
    const payload = new TextEncoder().encode('{"temperature":21}');
    expect(decodePayload({ node: 'n1', payload, arrivalMs: 5_000 }).admitted).toHaveLength(1);
  });
});

describe('one reading to each probe and time', () => {
  test('the missing half completes the reading', () => {
    expect(decodeJson([{ temperature: 21 }, { humidity: 93 }])).toEqual({
      admitted: [reading({ temperature: 21, humidity: 93 })],
      refused: [],
    });
  });

  test('a repeat changes nothing', () => {
    expect(decodeJson([{ temperature: 21 }, { temperature: 21 }])).toEqual({
      admitted: [reading({ temperature: 21 })],
      refused: [],
    });
  });

  test('a different value for the same probe and time is refused, since only one could be kept', () => {
    expect(decodeJson([{ temperature: 21 }, { temperature: 22 }, { temperature: 22, probe: 'film' }])).toEqual({
      admitted: [reading({ temperature: 21 }), reading({ temperature: 22, probe: 'film' })],
      refused: [{ reason: expect.stringContaining('give each reading its own time'), where: '/1' }],
    });
  });
});
