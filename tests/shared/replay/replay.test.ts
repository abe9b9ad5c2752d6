// A chamber with several probes replayed: the hottest and the driest count, probes come and go, calibration corrects, the log speaks.
import { describe, expect, it } from 'vitest';
import type { Corridor } from '../../../shared/healing/corridor.ts';
import { Replay } from '../../../shared/replay/replay.ts';
import type { ReplayResult } from '../../../shared/replay/replay-result.ts';
import type { ReplaySetup } from '../../../shared/replay/replay-setup.ts';
import { MINUTE_MS, utcText } from '../../../shared/units.ts';
import { CLOSED_MS, minute, steady } from './sample-series.ts';

const corridor: Corridor = {
  temperature: { lowLow: null, low: 18, high: 28, highHigh: null },
  humidity: { lowLow: null, low: 85, high: 100, highHigh: null },
};
const probe = (probeId: string, change: Partial<ReplaySetup['probes'][number]> = {}) => ({
  ...({ probeId, place: 'canopy', silenceMs: 15 * MINUTE_MS, fromMs: CLOSED_MS, toMs: Infinity } as const),
  ...change,
});

type TemperatureAt = (minute: number) => number | null;

/** Two probes read each minute for four hours; null = not heard then. */
function run(first: TemperatureAt, second: TemperatureAt, change: Partial<ReplaySetup> = {}): ReplayResult {
  const setup = {
    probes: [probe('p1'), probe('p2')],
    corridorAt: () => corridor,
    batch: { fromMs: CLOSED_MS, toMs: null },
  };
  const replay = new Replay({ ...setup, ...change });
  for (let i = 0; i < 240; i++) {
    for (const [number, temperature] of [first(i), second(i)].entries())
      if (temperature !== null) replay.hear(number, { timeMs: minute(i), temperature, humidity: 95 });
  }
  return replay.end(() => []);
}

const rules = ({ alarms }: ReplayResult) => alarms.map(({ rule }) => rule);
const warm: TemperatureAt = (i) => steady(i) + (i >= 100 && i < 140 ? 5.4 : 0);

describe('several probes', () => {
  it('are judged by the hottest', () => {
    expect(rules(run(steady, warm)).filter((rule) => rule === 'heat')).toHaveLength(1);
    expect(rules(run(steady, steady))).toEqual([]);
  });

  it('are counted together', () => {
    expect(run(steady, steady).quality).toEqual({ pass: 480, suspect: 0, fail: 0, missing: 0 });
  });

  it('count while they stand in the chamber', () => {
    const probes = [probe('p1'), probe('p2', { toMs: minute(90) })];
    expect(rules(run(steady, (i) => (i <= 90 ? steady(i) : null), { probes }))).toEqual([]);
    expect(rules(run(steady, (i) => (i <= 90 ? steady(i) : null)))).toEqual(['silent-probe']);
  });

  it('do not make up for each other: one that is silent is told, the chamber goes on', () => {
    const { alarms } = run(steady, (i) => (i < 60 || i > 200 ? steady(i) : null));
    expect(alarms.map(({ rule, returnedAt }) => [rule, returnedAt])).toEqual([['silent-probe', utcText(minute(201))]]);
  });
});

describe('what a batch brings', () => {
  it('begins and ends the watch', () => {
    expect(rules(run(steady, warm, { batch: { fromMs: minute(150), toMs: null } }))).toEqual([]);
    expect(rules(run(steady, warm, { batch: { fromMs: CLOSED_MS, toMs: minute(100) } }))).toEqual([]);
    const [heat] = run(steady, warm, { batch: { fromMs: CLOSED_MS, toMs: minute(110) } }).alarms.filter(
      ({ rule }) => rule === 'heat',
    );
    expect(heat?.returnedAt, 'the batch leaves and takes its alarms along').toBe(utcText(minute(110)));
  });

  it('keeps quiet what is disturbed on purpose', () => {
    const dry: Corridor = { ...corridor, humidity: { ...corridor.humidity, low: 96 } };
    const suppression = { cause: 'working', untilMs: minute(240), person: 'Ann' } as const;
    expect(rules(run(steady, steady, { corridorAt: () => dry }))).toEqual(['dry']);
    expect(rules(run(steady, steady, { corridorAt: () => dry, careAt: () => ({ suppression }) }))).toEqual([]);
  });
});

describe('calibration', () => {
  it('corrects what is watched; quality is judged by the raw values', () => {
    const replay = new Replay({
      probes: [probe('p1')],
      corridorAt: () => corridor,
      batch: { fromMs: CLOSED_MS, toMs: null },
    });
    for (let i = 0; i < 60; i++) {
      const raw = { timeMs: minute(i), temperature: steady(i), humidity: 95 };
      replay.hear(0, raw, { ...raw, temperature: raw.temperature + 6 });
    }
    const { alarms, quality } = replay.end(() => []);
    expect(alarms.map(({ rule }) => rule)).toEqual(['heat']);
    expect(quality.pass).toBe(60);
  });
});
