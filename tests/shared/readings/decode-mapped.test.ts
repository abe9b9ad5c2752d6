import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decodeMapped } from '../../../shared/readings/decode-mapped.ts';
import { type TopicMapping, topicMappingSchema } from '../../../shared/readings/topic-mapping.ts';
import { ARRIVAL_MS, inEnglish } from '../../support/readings.ts';

const base: TopicMapping = topicMappingSchema.parse({
  filter: 'site/+/air',
  node: 'level:1',
  temperature: { pointer: '/air/t', unit: 'Cel' },
  humidity: { pointer: '/air/rh', unit: '%RH' },
  time: { pointer: '/at', unit: 's' },
});

function decode(mapping: TopicMapping, message: unknown, topic = 'site/tent-3/air') {
  const payload = new TextEncoder().encode(JSON.stringify(message));
  return inEnglish(decodeMapped(mapping, { topic, payload, arrivalMs: ARRIVAL_MS }));
}

describe('decodeMapped', () => {
  test('takes node, values and time from where the mapping says', () => {
    expect(decode(base, { at: 1772434740, air: { t: 21.4, rh: 93.1 } })).toEqual({
      admitted: [{ node: 'tent-3', probe: '', timeMs: ARRIVAL_MS - 60_000, temperature: 21.4, humidity: 93.1 }],
      refused: [],
    });
  });

  test.each([
    {
      given: { temperature: { pointer: '/air/t', unit: 'degF' } },
      air: { t: 212 },
      is: { temperature: 100 },
      why: '°F',
    },
    {
      given: { humidity: { pointer: '/air/rh', unit: '/' } },
      air: { rh: 0.931 },
      is: { humidity: 93.1 },
      why: 'a ratio',
    },
    {
      given: { probe: 'film', node: 'tent-9' },
      air: { t: 21 },
      is: { probe: 'film', node: 'tent-9' },
      why: 'names given outright',
    },
    { given: {}, air: { t: 21, rh: null }, is: { temperature: 21, humidity: null }, why: 'null is an absent value' },
    { given: {}, air: { t: 21 }, is: { timeMs: ARRIVAL_MS }, why: 'without a time the arrival is taken' },
  ] satisfies { given: Partial<TopicMapping>; air: object; is: object; why: string }[])(
    '$why',
    ({ given, air, is }) => {
      expect(decode({ ...base, ...given }, { air })).toMatchObject({ admitted: [is], refused: [] });
    },
  );

  test.each([
    { unit: 'rfc3339', at: '2026-03-02T06:59:00Z' },
    { unit: 's', at: 1772434740 },
    { unit: 'ms', at: 1772434740000 },
  ] as const)('reads a time in $unit', ({ unit, at }) => {
    const mapping = { ...base, time: { pointer: '/at', unit } };
    expect(decode(mapping, { at, air: { t: 21 } }).admitted).toMatchObject([{ timeMs: ARRIVAL_MS - 60_000 }]);
  });

  test('a message that is nothing but the number is reached with the empty pointer', () => {
    const mapping: TopicMapping = { filter: 'site/+/t', node: 'tent-3', temperature: { pointer: '', unit: 'Cel' } };
    expect(decode(mapping, 21.4).admitted).toMatchObject([{ temperature: 21.4, timeMs: ARRIVAL_MS }]);
  });

  test.each([
    { message: { air: {} }, where: '', says: 'no value where the mapping looks', why: 'neither value is there' },
    { message: [1], where: '', says: 'no value where the mapping looks', why: 'another message altogether' },
    { message: { air: { t: '21.4' } }, where: '/air/t', says: 'the text "21.4"', why: 'a number in quotes' },
    { message: { air: { t: 21, rh: {} } }, where: '/air/rh', says: 'an object', why: 'the pointer stops too early' },
    { message: { at: 'now', air: { t: 21 } }, where: '/at', says: 'number of seconds', why: 'a time in another form' },
    { message: { at: 1772442000, air: { t: 21 } }, where: '/at', says: '2 h ahead', why: 'a clock that is ahead' },
    { message: { air: { t: 300 } }, where: '/air/t', says: 'impossible', why: 'an impossible number' },
  ])('$why is refused at "$where"', ({ message, where, says }) => {
    expect(decode(base, message)).toEqual({
      admitted: [],
      refused: [{ reason: expect.stringContaining(says), where }],
    });
  });

  test.each([
    { topic: 'site', says: 'no level 1' },
    { topic: 'site/tent 3/air', says: '"tent 3" may hold only' },
    { topic: 'site//air', says: 'is empty' },
  ])('the topic $topic names no node: $says', ({ topic, says }) => {
    expect(decode(base, { air: { t: 21 } }, topic)).toMatchObject({
      admitted: [],
      refused: [{ reason: expect.stringContaining(says) }],
    });
  });

  test('a message that is not JSON is refused', () => {
    const payload = new TextEncoder().encode('21,4');
    expect(decodeMapped(base, { topic: 'site/tent-3/air', payload, arrivalMs: ARRIVAL_MS })).toMatchObject({
      admitted: [],
      refused: [{ where: '' }],
    });
  });

  test('arbitrary topics and messages are answered', () => {
    fc.assert(
      fc.property(fc.string(), fc.jsonValue(), (topic, air) => {
        const { admitted, refused } = decode(base, { air, at: air }, topic);
        expect(admitted.length + refused.length).toBe(1);
      }),
    );
  });
});
