import { describe, expect, it } from 'vitest';
import { dewPoint, vapourKpa, vpdKpa } from '../../../shared/air/vapour.ts';
import {
  chamberClimate,
  healthyCanopy,
  leftOutReadings,
  type ProbeNow,
} from '../../../shared/readings/chamber-climate.ts';
import { MINUTE_MS } from '../../../shared/units.ts';

const NOW = Date.UTC(2026, 2, 2, 7);

function probe(change: Partial<ProbeNow> = {}): ProbeNow {
  return {
    probeId: 'p1',
    place: 'canopy',
    timeMs: NOW - MINUTE_MS,
    temperature: 24,
    humidity: 95,
    temperatureFlag: 1,
    humidityFlag: 1,
    silenceMs: 15 * MINUTE_MS,
    ...change,
  };
}

const nothing = {
  timeMs: null,
  temperature: null,
  humidity: null,
  vpdKpa: null,
  dewPoint: null,
  hottest: null,
  coldest: null,
  driest: null,
  wettest: null,
  healthyProbes: 0,
};

describe('the climate of a chamber', () => {
  it('is that of its only probe', () => {
    expect(chamberClimate([probe()], NOW, 0)).toEqual({
      timeMs: NOW - MINUTE_MS,
      temperature: 24,
      humidity: 95,
      vpdKpa: vpdKpa(24, 95),
      dewPoint: dewPoint(vapourKpa(24, 95)),
      hottest: 24,
      coldest: 24,
      driest: 95,
      wettest: 95,
      healthyProbes: 1,
      canopyProbes: 1,
    });
  });

  it('shows the median and keeps the extremes for the alarm rules', () => {
    const probes = [
      probe({ probeId: 'p1', temperature: 24, humidity: 95 }),
      probe({ probeId: 'p2', temperature: 29, humidity: 88, timeMs: NOW - 2 * MINUTE_MS }),
      probe({ probeId: 'p3', temperature: 23, humidity: 97 }),
    ];
    expect(chamberClimate(probes, NOW, 0)).toMatchObject({
      timeMs: NOW - MINUTE_MS,
      temperature: 24,
      humidity: 95,
      hottest: 29,
      coldest: 23,
      driest: 88,
      wettest: 97,
      vpdKpa: vpdKpa(24, 95),
      healthyProbes: 3,
    });
  });

  it('shows the middle of two', () => {
    const probes = [probe({ temperature: 24, humidity: 94 }), probe({ probeId: 'p2', temperature: 25, humidity: 97 })];
    expect(chamberClimate(probes, NOW, 0)).toMatchObject({ temperature: 24.5, humidity: 95.5 });
  });

  it.each([
    ['there is no probe', []],
    ['the only probe is a moment past its silence', [probe({ timeMs: NOW - 15 * MINUTE_MS - 1 })]],
    ['it failed', [probe({ temperatureFlag: 4, humidityFlag: 4 })]],
    ['it is doubted', [probe({ temperatureFlag: 3, humidityFlag: 3 })]],
    ['it sent nothing', [probe({ temperature: null, humidity: null, temperatureFlag: 9, humidityFlag: 9 })]],
    ['only film and house are heard', [probe({ place: 'film' }), probe({ place: 'house' })]],
  ])('is unknown when %s', (_why, probes) => {
    const canopyProbes = probes.filter((one) => one.place === 'canopy').length;
    expect(chamberClimate(probes, NOW, 0)).toEqual({ ...nothing, canopyProbes });
  });

  it.each([
    ['at the very end of its silence', { timeMs: NOW - 15 * MINUTE_MS }],
    ['not evaluated yet', { temperatureFlag: 2, humidityFlag: 2 }],
    ['from a clock a little ahead', { timeMs: NOW + MINUTE_MS }],
  ] as const)('takes a reading %s', (_why, change) => {
    expect(chamberClimate([probe(change)], NOW, 0)).toMatchObject({ temperature: 24, humidity: 95, healthyProbes: 1 });
  });

  it('goes by the silence of each probe', () => {
    const old = { timeMs: NOW - 10 * MINUTE_MS };
    const probes = [probe({ ...old, silenceMs: 5 * MINUTE_MS }), probe({ ...old, probeId: 'p2', temperature: 26 })];
    expect(chamberClimate(probes, NOW, 0)).toMatchObject({ temperature: 26, healthyProbes: 1, canopyProbes: 2 });
  });

  it('keeps a good temperature when the humidity of its probe is doubted, but gives no VPD from it', () => {
    expect(chamberClimate([probe({ humidity: 103, humidityFlag: 3 })], NOW, 0)).toMatchObject({
      temperature: 24,
      humidity: null,
      vpdKpa: null,
      dewPoint: null,
      driest: null,
      healthyProbes: 1,
    });
  });

  it('takes VPD from temperature and humidity of the same air only', () => {
    const probes = [
      probe({ temperature: 24, humidityFlag: 3 }),
      probe({ probeId: 'p2', temperatureFlag: 3, humidity: 90 }),
      probe({ probeId: 'p3', temperature: 26, humidity: 96 }),
    ];
    expect(chamberClimate(probes, NOW, 0)).toMatchObject({ temperature: 25, humidity: 93, vpdKpa: vpdKpa(26, 96) });
  });

  it('has no dew point in perfectly dry air', () => {
    expect(chamberClimate([probe({ humidity: 0 })], NOW, 0)).toMatchObject({ humidity: 0, dewPoint: null });
  });
});

describe('what the climate leaves out', () => {
  const hot = probe({ probeId: 'p2', temperature: 41, temperatureFlag: 3 });

  it('names a doubted hot value instead of letting it vanish, and keeps it out of the heat rule', () => {
    expect(chamberClimate([probe(), hot], NOW, 0)).toMatchObject({ hottest: 24 });
    expect(leftOutReadings([probe(), hot], NOW)).toEqual([
      { probeId: 'p2', quantity: 'temperature', value: 41, flag: 3 },
    ]);
  });

  it.each([
    ['what was never sent', probe({ temperature: null, temperatureFlag: 9 })],
    ['what is old', { ...hot, timeMs: NOW - 15 * MINUTE_MS - 1 }],
    ['what stands outside the canopy', { ...hot, place: 'film' as const }],
    ['what is healthy', probe()],
  ])('does not name %s', (_why, one) => {
    expect(leftOutReadings([one], NOW)).toEqual([]);
  });

  it('leaves the healthy half of a probe among the healthy', () => {
    expect(healthyCanopy([hot], NOW)).toEqual([
      { probeId: 'p2', timeMs: NOW - MINUTE_MS, temperature: null, humidity: 95 },
    ]);
  });
});
