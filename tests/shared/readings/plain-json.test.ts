import { describe, expect, test } from 'vitest';
import { ARRIVAL_MS, decodeJson, decodeText, reading } from '../../support/readings.ts';

describe('what is admitted', () => {
  test('a full reading', () => {
    const sent = { temperature: 21.4, humidity: 93.1, time: '2026-03-02T06:59:00Z', probe: 'canopy-1' };
    expect(decodeJson(sent)).toEqual({
      admitted: [reading({ probe: 'canopy-1', timeMs: ARRIVAL_MS - 60_000, temperature: 21.4, humidity: 93.1 })],
      refused: [],
    });
  });

  test.each([
    { sent: { temperature: 21.4 }, is: { temperature: 21.4 }, why: 'temperature alone, at its arrival' },
    { sent: { humidity: 93.1 }, is: { humidity: 93.1 }, why: 'humidity alone' },
    {
      sent: { temperature: null, humidity: 93.1, time: null, probe: null },
      is: { humidity: 93.1 },
      why: 'null is absent',
    },
    {
      sent: { temperature: 21.4, probe: '' },
      is: { temperature: 21.4 },
      why: 'an empty probe name is the unnamed probe',
    },
    { sent: { temperature: 0, humidity: 0 }, is: { temperature: 0, humidity: 0 }, why: 'zero is a value' },
    {
      sent: { temperature: 21.4, time: 1772434740.5 },
      is: { temperature: 21.4, timeMs: ARRIVAL_MS - 59_500 },
      why: 'epoch seconds',
    },
    {
      sent: { temperature: 21.4, time: '2026-03-02T08:00:00+01:00' },
      is: { temperature: 21.4 },
      why: 'a time with an offset',
    },
    {
      sent: { temperature: 21.4, rssi: -71, unit: 'C' },
      is: { temperature: 21.4 },
      why: 'other fields are ignored',
    },
    { sent: { temperature: 21.4, place: 'F' }, is: { temperature: 21.4 }, why: 'F under another name is no unit' },
  ])('$why', ({ sent, is }) => {
    expect(decodeJson(sent)).toEqual({ admitted: [reading(is)], refused: [] });
  });

  test('an array: the faulty elements are refused, the rest stand', () => {
    const sent = [{ temperature: 21 }, { temperature: 'warm' }, 5, { temperature: 22, probe: 'film' }];
    expect(decodeJson(sent)).toMatchObject({
      admitted: [
        { probe: '', temperature: 21 },
        { probe: 'film', temperature: 22 },
      ],
      refused: [{ where: '/1/temperature' }, { where: '/2' }],
    });
  });

  test('a faulty half takes its element along: an impossible number discredits the other', () => {
    expect(decodeJson([{ temperature: 21, humidity: -6 }])).toMatchObject({
      admitted: [],
      refused: [{ where: '/0/humidity' }],
    });
  });
});

describe('what is refused, and where', () => {
  test.each([
    { sent: {}, where: '', says: 'neither "temperature" nor "humidity"', why: 'an empty object' },
    { sent: { temperature: null }, where: '', says: 'neither', why: 'a sensor that had nothing' },
    { sent: { temp: 21 }, where: '', says: 'neither', why: 'another name' },
    { sent: [], where: '', says: 'empty', why: 'an empty list' },
    { sent: 21.4, where: '', says: 'A reading is an object; this is 21.4', why: 'a bare number' },
    { sent: null, where: '', says: 'this is null', why: 'null' },
    { sent: [[{ temperature: 21 }]], where: '/0', says: 'this is a list', why: 'a list in a list' },
    { sent: { temperature: '21.4' }, where: '/temperature', says: 'the text "21.4"', why: 'a number in quotes' },
    { sent: { humidity: true }, where: '/humidity', says: 'is true', why: 'yes or no' },
    { sent: { temperature: { value: 21 } }, where: '/temperature', says: 'an object', why: 'a value packed in' },
    { sent: { temperature: 70, unit: 'F' }, where: '/unit', says: '°F', why: 'Fahrenheit' },
    {
      sent: { temperature: 70, temperature_unit: '°F' },
      where: '/temperature_unit',
      says: '°F',
      why: 'Fahrenheit by another field',
    },
    { sent: { temperature: 70, Units: 'degF' }, where: '/Units', says: '°F', why: 'Fahrenheit in SenML’s word' },
    {
      sent: { temperature: 70, 'scale/t': 'Fahrenheit' },
      where: '/scale~1t',
      says: '°F',
      why: 'Fahrenheit written out',
    },
    { sent: { temperature: 21, probe: 7 }, where: '/probe', says: 'name it with text', why: 'a numbered probe' },
    {
      sent: { temperature: 21, probe: 'top shelf' },
      where: '/probe',
      says: 'may hold only',
      why: 'a space in the name',
    },
    { sent: { temperature: 21, probe: 'p'.repeat(65) }, where: '/probe', says: 'longer than 64', why: 'a long name' },
    {
      sent: { temperature: 21, time: '2026-03-02 07:00' },
      where: '/time',
      says: 'RFC 3339',
      why: 'a time without seconds and zone',
    },
    { sent: { temperature: 21, time: true }, where: '/time', says: 'is true', why: 'a time that is none' },
    {
      sent: { n: 'temperature', u: 'Cel', v: 21 },
      where: '',
      says: 'square brackets',
      why: 'a SenML record without its list',
    },
  ])('$why: "$says" at "$where"', ({ sent, where, says }) => {
    expect(decodeJson(sent)).toEqual({ admitted: [], refused: [{ reason: expect.stringContaining(says), where }] });
  });

  test('a number beyond every number is refused as one', () => {
    expect(decodeText('{"temperature":1e999}')).toMatchObject({ refused: [{ where: '/temperature' }] });
    expect(decodeText('{"temperature":21,"time":1e999}')).toMatchObject({ refused: [{ where: '/time' }] });
  });

  test.each([
    { elements: 10_000, admitted: 10_000, refused: 0 },
    { elements: 10_001, admitted: 0, refused: 1 },
  ])('a list of $elements readings: $admitted admitted, $refused refused', ({ elements, admitted, refused }) => {
    const admission = decodeJson(
      Array.from({ length: elements }, (_, i) => ({ temperature: 21, time: 1772400000 + i })),
    );
    expect(admission.admitted).toHaveLength(admitted);
    expect(admission.refused).toHaveLength(refused);
  });

  test('a refusal never repeats a long text whole', () => {
    const [refusal] = decodeJson({ temperature: 'x'.repeat(100_000) }).refused;
    expect(refusal?.reason.length).toBeLessThan(200);
  });
});
