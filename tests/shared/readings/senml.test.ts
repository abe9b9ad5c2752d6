import { describe, expect, test } from 'vitest';
import { ARRIVAL_MS, decodeJson, decodeText, reading } from '../../support/readings.ts';

const temperature = { n: 'temperature', u: 'Cel', v: 21.4 };
const humidity = { n: 'humidity', u: '%RH', v: 93.1 };

describe('names', () => {
  test.each([
    { name: 'temperature', probe: '', why: 'the word alone is the one unnamed probe' },
    { name: 'canopy-1/temperature', probe: 'canopy-1', why: 'parted by a slash' },
    { name: 'canopy-1:temperature', probe: 'canopy-1', why: 'parted by a colon' },
    { name: 'canopy-1.temperature', probe: 'canopy-1', why: 'parted by a point' },
    { name: 'canopy-1-temperature', probe: 'canopy-1', why: 'parted by a dash' },
    { name: 'canopy-1_temperature', probe: 'canopy-1', why: 'parted by an underscore' },
    { name: 'a/b/temperature', probe: 'a/b', why: 'only the last separator goes' },
    { name: 'humidity/temperature', probe: 'humidity', why: 'the last word says what it is' },
  ])('$name is the temperature of probe "$probe": $why', ({ name, probe }) => {
    expect(decodeJson([{ ...temperature, n: name }]).admitted).toEqual([reading({ probe, temperature: 21.4 })]);
  });

  test('the base name is part of the probe’s address', () => {
    const pack = [{ bn: 'urn:dev:mac:0024befffe804ff1:', ...temperature }, humidity];
    expect(decodeJson(pack)).toEqual({
      admitted: [reading({ probe: 'urn:dev:mac:0024befffe804ff1', temperature: 21.4, humidity: 93.1 })],
      refused: [],
    });
  });

  test.each(['position', 'temperature/raw', 'Temperature', 'temp', 'humidity-setpoint'])(
    '%s is none of our business: neither admitted nor refused',
    (name) => {
      expect(decodeJson([{ n: name, u: '%EL', v: 98 }, temperature])).toEqual({
        admitted: [reading({ temperature: 21.4 })],
        refused: [],
      });
    },
  );

  test('a word run into temperature is refused, for it might be one', () => {
    expect(decodeJson([{ ...temperature, n: 'airtemperature' }])).toEqual({
      admitted: [],
      refused: [{ reason: 'The name "airtemperature" needs one of / : . - _ before "temperature".', where: '/0' }],
    });
  });

  test.each([
    { length: 64, admitted: 1 },
    { length: 65, admitted: 0 },
  ])('a probe address of $length characters: $admitted admitted', ({ length, admitted }) => {
    expect(decodeJson([{ ...temperature, n: `${'p'.repeat(length)}/temperature` }]).admitted).toHaveLength(admitted);
  });
});

describe('units', () => {
  test.each([
    {
      record: { n: 'humidity', u: '/', v: 0.931 },
      humidity: 93.1,
      why: 'a ratio, without the tail of binary fractions',
    },
    { record: { n: 'humidity', u: '/', v: 1.1 }, humidity: 110, why: 'a wet sensor’s ratio' },
    { record: { n: 'humidity', u: '%RH', v: 93.1 }, humidity: 93.1, why: 'percent' },
    { record: { bu: '%RH', n: 'humidity', v: 93.1 }, humidity: 93.1, why: 'the base unit' },
  ])('$why', ({ record, humidity: expected }) => {
    expect(decodeJson([record]).admitted).toEqual([reading({ humidity: expected })]);
  });

  test.each([
    { record: { ...temperature, u: 'degF', v: 70 }, says: 'only through a mapping', why: '°F' },
    { record: { ...temperature, u: 'K', v: 294 }, says: '"K" is not admitted for temperature', why: 'kelvin' },
    { record: { ...temperature, u: '%RH' }, says: '"%RH" is not admitted for temperature', why: 'mixed up' },
    { record: { n: 'temperature', v: 21 }, says: 'no unit', why: 'nothing is guessed' },
    {
      record: { ...humidity, u: '%' },
      says: '"%" is not admitted for humidity',
      why: 'not the RFC’s unit for humidity',
    },
    { record: { n: 'humidity', v: 93 }, says: 'no unit', why: 'percent or ratio?' },
  ])('$record.n in $record.u is refused: $why', ({ record, says }) => {
    expect(decodeJson([record])).toEqual({
      admitted: [],
      refused: [{ reason: expect.stringContaining(says), where: '/0' }],
    });
  });
});

describe('values', () => {
  test.each([
    { value: { vs: '21' }, why: 'text' },
    { value: { vb: true }, why: 'yes or no' },
    { value: { vd: 'MjE' }, why: 'bytes' },
    { value: { s: 120 }, why: 'a sum' },
    { value: {}, why: 'nothing at all' },
  ])('a temperature that brings $why is refused', ({ value }) => {
    expect(decodeJson([{ n: 'temperature', u: 'Cel', ...value }])).toEqual({
      admitted: [],
      refused: [{ reason: 'The temperature has no number; send one in "v".', where: '/0' }],
    });
  });

  test.each([
    { text: '[{"n":"temperature","u":"Cel","v":"21"}]', where: '/0/v', why: 'a number in quotes' },
    { text: '[{"n":"temperature","u":"Cel","v":null}]', where: '/0/v', why: 'null' },
    { text: '[{"n":"temperature","u":"Cel","v":1e999}]', where: '/0/v', why: 'beyond every number' },
    { text: '[{"n":"temperature","u":"Cel","v":21,"t":"now"}]', where: '/0/t', why: 'a time that is text' },
    { text: '[{"n":7,"u":"Cel","v":21}]', where: '/0/n', why: 'a name that is a number' },
    { text: '[{"n":"temperature","u":1,"v":21}]', where: '/0/u', why: 'a unit that is a number' },
  ])('$why is refused at $where', ({ text, where }) => {
    expect(decodeText(text)).toMatchObject({ admitted: [], refused: [{ where }] });
  });

  test('text, yes-or-no and bytes under other names are none of our business', () => {
    expect(
      decodeJson([
        { n: 'state', vs: 'on' },
        { n: 'door', vb: true },
        { n: 'blob', vd: 'AQ' },
      ]),
    ).toEqual({
      admitted: [],
      refused: [],
    });
  });
});

describe('packs', () => {
  test('temperature and humidity of one probe and time become one reading, wherever they stand in the pack', () => {
    const pack = [
      { bt: 1772434740, ...temperature },
      { ...temperature, t: 60, v: 21.5 },
      { ...humidity, t: 60, v: 94 },
      humidity,
    ];
    expect(decodeJson(pack)).toEqual({
      admitted: [
        reading({ timeMs: ARRIVAL_MS - 60_000, temperature: 21.4, humidity: 93.1 }),
        reading({ temperature: 21.5, humidity: 94 }),
      ],
      refused: [],
    });
  });

  test('a faulty record is refused by itself', () => {
    const pack = [temperature, { ...humidity, u: 'g/m3' }, 7, { ...humidity, n: 'film/humidity' }];
    expect(decodeJson(pack)).toMatchObject({
      admitted: [
        { probe: '', temperature: 21.4, humidity: null },
        { probe: 'film', humidity: 93.1 },
      ],
      refused: [{ where: '/1' }, { where: '/2' }],
    });
  });

  test('what a refused record says of the base still holds for those after it', () => {
    const pack = [{ bn: 'film/', ...temperature, u: 'degF' }, humidity];
    expect(decodeJson(pack).admitted).toEqual([reading({ probe: 'film', humidity: 93.1 })]);
  });

  test.each([
    { base: { bt: 'now' }, where: '/1/bt', why: 'a base time that is text' },
    { base: { bn: 5 }, where: '/1/bn', why: 'a base name that is a number' },
    { base: { bver: 11 }, where: '/1/bver', why: 'a version not understood' },
    { base: { bver: 'ten' }, where: '/1/bver', why: 'a version that is text' },
    { base: { 'bx/_': 1 }, where: '/1/bx~1_', why: 'a base field that must be understood' },
  ])('$why ends the pack there, and says how many records were left', ({ base, where }) => {
    const { admitted, refused } = decodeJson([temperature, { ...base, n: 'film/temperature' }, humidity, humidity]);
    expect(admitted).toEqual([reading({ temperature: 21.4 })]);
    expect(refused).toEqual([{ reason: expect.stringContaining('Records after it (2)'), where }]);
  });

  test('a record of base fields alone is no reading and no fault', () => {
    const pack = [
      { bn: 'canopy-1/', bu: 'Cel', bt: 1772434740 },
      { n: 'temperature', v: 21.4 },
    ];
    expect(decodeJson(pack)).toEqual({
      admitted: [reading({ probe: 'canopy-1', timeMs: ARRIVAL_MS - 60_000, temperature: 21.4 })],
      refused: [],
    });
  });

  test.each([
    { records: 20_000, refused: 0 },
    { records: 20_001, refused: 1 },
  ])('a pack of $records records: $refused refused', ({ records, refused }) => {
    const pack = Array.from({ length: records }, () => ({ n: 'b', v: 1 }));
    expect(decodeJson(pack).refused).toHaveLength(refused);
  });
});
