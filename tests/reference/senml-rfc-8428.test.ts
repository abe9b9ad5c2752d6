// The examples of RFC 8428 §5.1 and its rules of §4. [R] = read in the source of the RFC's draft (core-wg/senml-spec, files
// ex3, ex5 and ex6 with their resolved forms). [R2] = read second-hand, in implementations that quote the clause.
import { describe, expect, test } from 'vitest';
import { decodePayload } from '../../shared/readings/decode-payload.ts';
import { resolveSenml } from '../../shared/readings/resolve-senml.ts';

const ARRIVAL_MS = Date.parse('2026-03-02T07:00:00Z');

function decode(pack: unknown) {
  return decodePayload({ node: 'n1', payload: new TextEncoder().encode(JSON.stringify(pack)), arrivalMs: ARRIVAL_MS });
}

/** Resolved records in the RFC's own fields, times in seconds. */
function resolve(pack: readonly unknown[]) {
  return resolveSenml(pack, ARRIVAL_MS).map((record) =>
    'reason' in record ? record : { n: record.name, u: record.unit, t: record.timeMs / 1000, v: record.value },
  );
}

const wireName = 'urn:dev:ow:10e2073a01080063';

describe('RFC 8428 examples', () => {
  const single = [{ n: wireName, u: 'Cel', v: 23.1 }];

  test('§5.1.1 [R]: a single datapoint is resolved to the time it arrived', () => {
    expect(resolve(single)).toEqual([{ n: wireName, u: 'Cel', t: ARRIVAL_MS / 1000, v: 23.1 }]);
  });

  test('§5.1.1: its name does not say temperature, so it is no reading, and no fault either', () => {
    expect(decode(single)).toEqual({ admitted: [], refused: [] });
  });

  test('§5.1.2 [R, ex3 in its resolved form]: negative times count back from the base time, and the unit of a record goes before the base unit', () => {
    const pack = [
      { bn: 'urn:dev:ow:10e2073a0108006:', bt: 1.276020076001e9, bu: 'A', bver: 5, n: 'voltage', u: 'V', v: 120.1 },
      { n: 'current', t: -5, v: 1.2 },
      { n: 'current', t: -4, v: 1.3 },
      { n: 'current', t: -3, v: 1.4 },
      { n: 'current', t: -2, v: 1.5 },
      { n: 'current', t: -1, v: 1.6 },
      { n: 'current', v: 1.7 },
    ];
    const current = (t: number, v: number) => ({ n: 'urn:dev:ow:10e2073a0108006:current', u: 'A', t, v });
    expect(resolve(pack)).toEqual([
      { n: 'urn:dev:ow:10e2073a0108006:voltage', u: 'V', t: 1276020076.001, v: 120.1 },
      current(1276020071.001, 1.2),
      current(1276020072.001, 1.3),
      current(1276020073.001, 1.4),
      current(1276020074.001, 1.5),
      current(1276020075.001, 1.6),
      current(1276020076.001, 1.7),
    ]);
    expect(decode(pack)).toEqual({ admitted: [], refused: [] });
  });

  test('§5.1.3 and §5.1.4 [R]: many measurements under one base name resolve to the printed resolved form', () => {
    const pack = [
      { bn: wireName, bt: 1.320067464e9, bu: '%RH', v: 20 },
      { u: 'lon', v: 24.30621 },
      { u: 'lat', v: 60.07965 },
      { t: 60, v: 20.3 },
      { u: 'lon', t: 60, v: 24.30622 },
      { u: '%EL', t: 150, v: 98 },
      { t: 180, v: 21.2 },
    ];
    expect(resolve(pack)).toEqual([
      { n: wireName, u: '%RH', t: 1320067464, v: 20 },
      { n: wireName, u: 'lon', t: 1320067464, v: 24.30621 },
      { n: wireName, u: 'lat', t: 1320067464, v: 60.07965 },
      { n: wireName, u: '%RH', t: 1320067524, v: 20.3 },
      { n: wireName, u: 'lon', t: 1320067524, v: 24.30622 },
      { n: wireName, u: '%EL', t: 1320067614, v: 98 },
      { n: wireName, u: '%RH', t: 1320067644, v: 21.2 },
    ]);
  });

  test('§5.1.6 [R]: a collection of resources; the base time carries on past the second base name', () => {
    const pack = [
      { bn: '2001:db8::2/', bt: 1.320078429e9, n: 'temperature', u: 'Cel', v: 25.2 },
      { n: 'humidity', u: '%RH', v: 30 },
      { bn: '2001:db8::1/', n: 'temperature', u: 'Cel', v: 12.3 },
      { n: 'humidity', u: '%RH', v: 67 },
    ];
    expect(resolve(pack)).toEqual([
      { n: '2001:db8::2/temperature', u: 'Cel', t: 1320078429, v: 25.2 },
      { n: '2001:db8::2/humidity', u: '%RH', t: 1320078429, v: 30 },
      { n: '2001:db8::1/temperature', u: 'Cel', t: 1320078429, v: 12.3 },
      { n: '2001:db8::1/humidity', u: '%RH', t: 1320078429, v: 67 },
    ]);
    const timeMs = Date.parse('2011-10-31T16:27:09Z');
    expect(decode(pack)).toEqual({
      admitted: [
        { node: 'n1', probe: '2001:db8::2', timeMs, temperature: 25.2, humidity: 30 },
        { node: 'n1', probe: '2001:db8::1', timeMs, temperature: 12.3, humidity: 67 },
      ],
      refused: [],
    });
  });
});

describe('RFC 8428 rules', () => {
  test.each([
    { t: 2 ** 28, timeMs: 2 ** 28 * 1000, why: '2^28 itself is absolute: 1978-07-04T21:24:16Z' },
    { t: 2 ** 28 - 1, timeMs: ARRIVAL_MS + (2 ** 28 - 1) * 1000, why: 'the largest relative time' },
    { t: 0, timeMs: ARRIVAL_MS, why: 'zero is now' },
    { t: -60, timeMs: ARRIVAL_MS - 60_000, why: 'a minute ago' },
    { t: -(2 ** 28), timeMs: ARRIVAL_MS - 2 ** 28 * 1000, why: 'every negative time is relative' },
  ])('§4.5.3 [R2]: time $t means $why', ({ t, timeMs }) => {
    expect(resolveSenml([{ n: 'a', t, v: 1 }], ARRIVAL_MS)).toMatchObject([{ timeMs }]);
  });

  test('§4.5.3: base time and time are added before it is told whether they are relative', () => {
    expect(resolveSenml([{ bt: 1.7e9, n: 'a', t: 20, v: 1 }], ARRIVAL_MS)).toMatchObject([
      { timeMs: 1_700_000_020_000 },
    ]);
  });

  test('§4.5.4 [R]: base value and value are added, and a missing value is zero beside a base value', () => {
    const values = resolve([{ bv: 20, n: 'a', v: 1.5 }, { n: 'b' }, { n: 'c', vs: 'on' }]);
    expect(values).toMatchObject([{ v: 21.5 }, { v: 20 }, { v: null }]);
  });

  test.each([
    { field: 'extra', refused: 0, why: 'an unknown field is ignored' },
    { field: 'extra_', refused: 1, why: 'one that ends in "_" must be understood' },
    { field: '_extra', refused: 0, why: 'only the end of the name counts' },
  ])('§4.4 [R]: "$field": $why', ({ field, refused }) => {
    expect(decode([{ n: 'temperature', u: 'Cel', v: 20, [field]: 1 }]).refused).toHaveLength(refused);
  });

  test.each([
    { bver: 5, refused: 0, why: 'the version of the drafts' },
    { bver: 10, refused: 0, why: 'the version of the RFC' },
    { bver: 11, refused: 1, why: 'newer than what is understood' },
  ])('§4.4 [R]: version $bver, $why', ({ bver, refused }) => {
    expect(decode([{ bver, n: 'temperature', u: 'Cel', v: 20 }]).refused).toHaveLength(refused);
  });

  test.each([
    { name: 'a-Z0:./_', good: true, why: 'every character that is allowed' },
    { name: '9a', good: true, why: 'a digit may lead' },
    { name: '/a', good: false, why: 'a slash may not lead' },
    { name: '_a', good: false, why: 'nor an underscore' },
    { name: 'a b', good: false, why: 'no spaces' },
    { name: 'größe', good: false, why: 'no letters beyond A to z' },
    { name: '', good: false, why: 'there must be a name' },
  ])('§4.5.1 [R, the slash as in the RFC]: the name "$name": $why', ({ name, good }) => {
    expect('reason' in (resolveSenml([{ n: name, v: 1 }], ARRIVAL_MS)[0] ?? {})).toBe(!good);
  });
});
