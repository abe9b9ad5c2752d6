// How long a probe stood alone and the film was expected wet or dry: once a minute, from the newest good readings, never across a silence.
import { describe, expect, it } from 'vitest';
import { AirTally } from '../../../server/record/air-tally.ts';
import type { ProbeSource } from '../../../server/record/record-sources.ts';
import { FLAG, type Flag } from '../../../shared/readings/reading.ts';
import { HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';

function source(probe: number, place: ProbeSource['place']): ProbeSource {
  return {
    ...{ probe, label: `Probe ${probe}`, id: `p${probe}`, node: 'n', address: `${probe}`, place },
    ...{
      silenceMs: 10 * MINUTE_MS,
      placedToMs: 2 * HOUR_MS,
      fromMs: 0,
      toMs: 2 * HOUR_MS,
      calibrations: [],
      history: [],
    },
  };
}

type Air = readonly [temperature: number, humidity: number, flag?: Flag];

/** Every source says the same every minute of the minutes given, the last included. */
function tally(said: ReadonlyMap<ProbeSource, Air>, minutes: readonly number[], toMs = HOUR_MS): AirTally {
  const air = new AirTally([...said.keys()], { fromMs: 0, toMs });
  for (const minute of minutes) {
    for (const [one, [temperature, humidity, flag = FLAG.pass]] of said) {
      const timeMs = minute * MINUTE_MS;
      const flags = { temperatureFlag: flag, humidityFlag: flag, receivedMs: timeMs, late: false };
      air.add(one, { timeMs, temperature, humidity, ...flags });
    }
  }
  return air;
}

const minutesTo = (last: number) => Array.from({ length: last + 1 }, (_, minute) => minute);
const [one, two, three] = [source(1, 'canopy'), source(2, 'canopy'), source(3, 'canopy')];
const [film, house] = [source(4, 'film'), source(5, 'house')];

describe('a canopy probe', () => {
  it('that two others do not back stood alone, with how far it was off', () => {
    const air = tally(
      new Map<ProbeSource, Air>([
        [one, [24, 95]],
        [two, [24.2, 96]],
        [three, [27, 80]],
      ]),
      minutesTo(60),
    );
    expect(air.disagreement(three)).toEqual({ hours: 1, temperature: 27 - 24.1, humidity: 80 - 95.5 });
    expect(air.disagreement(one)).toEqual({ hours: 0, temperature: null, humidity: null });
  });

  it.each([
    { second: [24, 85, FLAG.suspect] as Air, why: 'the other is doubted for itself and counts for nothing' },
    { second: [24.5, 91] as Air, why: 'the other is within half a degree and four percent' },
  ])('did not disagree where $why', ({ second }) => {
    const air = tally(
      new Map<ProbeSource, Air>([
        [one, [24, 95]],
        [two, second],
      ]),
      minutesTo(60),
    );
    expect([air.disagreement(one).hours, air.disagreement(two).hours]).toEqual([0, 0]);
  });

  it('alone in its chamber has nobody to disagree with', () => {
    expect(tally(new Map<ProbeSource, Air>([[one, [24, 95]]]), minutesTo(60)).disagreement(one).hours).toBe(0);
  });
});

describe('the film', () => {
  it.each([
    { under: 18, expected: { wetHours: 1, dryHours: 0, unknownHours: 0 }, why: 'far under the dew point' },
    { under: 30, expected: { wetHours: 0, dryHours: 1, unknownHours: 0 }, why: 'far above it' },
    { under: 23.2, expected: { wetHours: 0, dryHours: 0, unknownHours: 1 }, why: 'as near to it as the uncertainty' },
  ])('with a probe under it $why', ({ under, expected }) => {
    const said = new Map<ProbeSource, Air>([
      [one, [24, 95]],
      [film, [under, 90]],
      [house, [10, 50]],
    ]);
    expect(tally(said, minutesTo(60)).film()).toEqual(expected);
  });

  it('is estimated from house air where no probe is under it', () => {
    const said = new Map<ProbeSource, Air>([
      [one, [24, 95]],
      [house, [14, 50]],
    ]);
    expect(tally(said, minutesTo(60)).film()).toMatchObject({ wetHours: 1 });
  });

  it('cannot be told over a silence, and after the last reading', () => {
    const said = new Map<ProbeSource, Air>([
      [one, [24, 95]],
      [film, [18, 90]],
    ]);
    const heard = [...minutesTo(20), ...minutesTo(20).map((minute) => minute + 60)];
    const { wetHours, unknownHours } = tally(said, heard, 2 * HOUR_MS).film();
    expect(wetHours).toBeCloseTo(40 / 60, 9);
    expect(unknownHours).toBeCloseTo(80 / 60, 9);
  });
});
