import { describe, expect, test } from 'vitest';
import type { Calibration, HumidityPoint } from '../../../shared/readings/calibration.ts';
import { calibrationFaults } from '../../../shared/readings/calibration-faults.ts';
import { english } from '../../../shared/words/en/english.ts';

const placesOf = (entry: Calibration) => calibrationFaults(entry).map(({ where }) => where);
const offset = (given: { temperature?: number; humidity?: number }): Calibration => ({
  fromMs: 0,
  kind: 'offset',
  temperature: given.temperature === undefined ? undefined : { offset: given.temperature },
  humidity: given.humidity === undefined ? undefined : { offset: given.humidity },
});
const twoPoints = (one: [number, number], other: [number, number], temperature?: number): Calibration => ({
  fromMs: 0,
  kind: 'two-point',
  temperature: temperature === undefined ? undefined : { offset: temperature },
  humidity: [point(one), point(other)],
});
const point = ([reference, measured]: [number, number]): HumidityPoint => ({ reference, measured });

describe('an offset entry', () => {
  test.each([
    { given: { temperature: 3 }, places: [], why: '3 °C is the most' },
    { given: { temperature: 3.01 }, places: ['/temperature/offset'], why: 'more is a broken probe' },
    { given: { temperature: -3.01 }, places: ['/temperature/offset'], why: 'downward too' },
    { given: { humidity: -10 }, places: [], why: '10 %RH is the most' },
    { given: { humidity: 10.1 }, places: ['/humidity/offset'], why: 'more is a broken probe' },
    { given: { humidity: Number.NaN }, places: ['/humidity/offset'], why: 'not a number' },
    { given: { temperature: 4, humidity: 11 }, places: ['/temperature/offset', '/humidity/offset'], why: 'both told' },
    { given: { temperature: 0 }, places: [], why: 'an offset of 0 undoes an earlier one' },
    { given: {}, places: [''], why: 'nothing is corrected' },
  ])('$given: $why', ({ given, places }) => {
    expect(placesOf(offset(given))).toEqual(places);
  });
});

describe('a two-point entry', () => {
  // Each pair is [reference, measured].
  test.each<{ one: [number, number]; other: [number, number]; places: string[]; why: string }>([
    { one: [75.3, 77], other: [97.3, 96], places: [], why: 'NaCl with K2SO4, as it should be' },
    { one: [97.3, 96], other: [75.3, 77], places: [], why: 'in either order' },
    { one: [75.3, 77], other: [75.3, 77], places: ['/humidity'], why: 'two equal points' },
    { one: [75.3, 80], other: [84.3, 80], places: ['/humidity'], why: 'the probe showed the same at both' },
    { one: [75, 75], other: [79.9, 80], places: ['/humidity'], why: 'less than 5 %RH apart' },
    { one: [75, 75], other: [80, 80], places: [], why: '5 %RH apart' },
    { one: [50, 50], other: [74, 70], places: [], why: 'a gain of 1.2' },
    { one: [50, 50], other: [74.2, 70], places: ['/humidity'], why: 'a gain of 1.21' },
    { one: [50, 50], other: [66, 70], places: [], why: 'a gain of 0.8' },
    { one: [50, 50], other: [65.8, 70], places: ['/humidity'], why: 'a gain of 0.79' },
    { one: [75, 80], other: [85, 75], places: ['/humidity'], why: 'the probe falls as the air gets wetter' },
    { one: [75.3, 86], other: [97.3, 97], places: ['/humidity/0/measured'], why: 'more than 10 %RH off at one' },
    { one: [75.3, 76], other: [101, 97], places: ['/humidity/1/reference'], why: 'no air of 101 %RH' },
    { one: [-1, 0], other: [101, 97], places: ['/humidity/0/reference', '/humidity/1/reference'], why: 'both told' },
    { one: [75.3, Number.NaN], other: [97.3, 97], places: ['/humidity/0/measured'], why: 'not a number' },
  ])('$one and $other: $why', ({ one, other, places }) => {
    expect(placesOf(twoPoints(one, other))).toEqual(places);
  });

  test('a temperature offset beside it is judged too', () => {
    expect(placesOf(twoPoints([75.3, 77], [97.3, 96], 5))).toEqual(['/temperature/offset']);
  });

  test('every reason says what to do', () => {
    const reasons = [offset({}), offset({ humidity: 11 }), twoPoints([75, 77], [75, 77]), twoPoints([50, 50], [75, 70])]
      .flatMap(calibrationFaults)
      .map(({ reason }) => reason(english));
    expect(reasons).toHaveLength(4);
    for (const reason of reasons) expect(reason).toMatch(/; (give|check|take) /);
  });
});
