// A probe that is not believed: by its own flags, or by its neighbours.
import { describe, expect, it } from 'vitest';
import { suspectProbe } from '../../../../shared/alarms/rules/suspect-probe.ts';
import type { ProbeNow } from '../../../../shared/readings/chamber-climate.ts';
import { MINUTE_MS } from '../../../../shared/units.ts';
import { NOON_MS, sceneAt } from '../scenes.ts';

function probe(probeId: string, change: Partial<ProbeNow> = {}): ProbeNow {
  return {
    ...{ probeId, place: 'canopy', timeMs: NOON_MS, temperature: 24, humidity: 95 },
    ...{ temperatureFlag: 1, humidityFlag: 1, silenceMs: 15 * MINUTE_MS },
    ...change,
  };
}
const judge = (readings: ProbeNow[], batchId: string | null = 'batch-1') =>
  suspectProbe
    .judge(sceneAt(0, { readings, batchId }), () => 0)
    .map(({ probeId, level, value }) => [probeId, level, value]);

describe('a probe', () => {
  it.each<{ change: Partial<ProbeNow>; level: unknown; value: number | null; why: string }>([
    { change: {}, level: 0, value: null, why: 'believed' },
    { change: { temperatureFlag: 2 }, level: 0, value: null, why: 'not evaluated is no doubt' },
    { change: { humidityFlag: 3 }, level: 1, value: null, why: 'its humidity is suspect' },
    {
      change: { temperature: 41, temperatureFlag: 3 },
      level: 2,
      value: 41,
      why: 'its temperature is: the heat watch has lost it',
    },
    { change: { temperature: 80, temperatureFlag: 4, humidityFlag: 4 }, level: 2, value: 80, why: 'both have failed' },
    {
      change: { timeMs: NOON_MS - 15 * MINUTE_MS - 1, humidityFlag: 3 },
      level: 'unknown',
      value: null,
      why: 'silent: it says nothing for or against itself',
    },
  ])('$why', ({ change, level, value }) => {
    expect(judge([probe('p1', change)])).toEqual([['p1', level, value]]);
  });

  it.each([
    { temperature: 24.5, levels: [0, 0, 0], why: 'within half a degree of the others' },
    { temperature: 24.6, levels: [0, 0, 1], why: 'the odd one of three' },
  ])('$why', ({ temperature, levels }) => {
    const readings = [probe('p1'), probe('p2'), probe('p3', { temperature })];
    expect(judge(readings).map(([, level]) => level)).toEqual(levels);
  });

  it('of two that disagree, both are doubted: nobody can say which is right', () => {
    expect(judge([probe('p1'), probe('p2', { humidity: 90 })]).map(([, level]) => level)).toEqual([1, 1]);
  });

  it('under the film, or with no batch in the chamber, is not judged', () => {
    expect(judge([probe('p1', { place: 'film', humidityFlag: 3 })])).toEqual([]);
    expect(judge([probe('p1', { humidityFlag: 3 })], null)).toEqual([]);
  });
});
