// The limits in a record: as the plan went, with the house air that was known at the time.
import { describe, expect, it } from 'vitest';
import { recordCorridor } from '../../../server/record/record-corridor.ts';
import { findStandardProfile } from '../../../shared/healing/standard-profiles.ts';
import { DAY_MS, HOUR_MS } from '../../../shared/units.ts';
import { readingsFrom } from './record-text.ts';

const closedMs = Date.parse('2026-03-02T15:00:00Z');
const window = { fromMs: closedMs, toMs: closedMs + 9 * DAY_MS };
const times = { openedMs: closedMs, closedMs, finishedMs: null, zone: 'Europe/Amsterdam', holds: [], moves: [] };
const house = {
  probe: 9,
  label: 'House',
  id: 'p9',
  node: 'n',
  address: '',
  place: 'house' as const,
  silenceMs: HOUR_MS,
  placedToMs: window.toMs,
  calibrations: [],
  history: [],
};

async function corridor(humidity: number | null, houses = 1) {
  const document = findStandardProfile('tomato-common-practice')?.document;
  if (document === undefined) throw new Error('the shipped tomato profile is gone');
  const asked: number[] = [];
  const mean = async (_probe: number, fromMs: number, toMs: number) => {
    asked.push(toMs - fromMs);
    return { temperature: null, humidity };
  };
  const store = { readings: { ...readingsFrom([]).readings, mean } };
  const sources = Array.from({ length: houses }, () => ({ ...house, ...window }));
  return { at: await recordCorridor(store, { document, times, sources, window }), asked };
}

/** Hardening, a day after the film is off: limits stand around house level, −20 and +25 %RH. */
const hardeningMs = closedMs + 8 * DAY_MS - 12 * HOUR_MS;

const cases: [string, number | null, number, { low: number; high: number }][] = [
  ['follow the house', 60, 1, { low: 40, high: 85 }],
  ['never ask for more than saturated air', 90, 1, { low: 70, high: 100 }],
  ['fall back on the profile when the house probe says nothing', null, 1, { low: 45, high: 90 }],
  ['fall back on the profile without a house probe', 60, 0, { low: 45, high: 90 }],
];

describe('limits at house level', () => {
  it.each(cases)('%s', async (_, humidity, houses, expected) => {
    const { at } = await corridor(humidity, houses);
    expect(at(hardeningMs)?.humidity).toMatchObject(expected);
  });

  it('ask for the mean of a whole day', async () => {
    const { asked } = await corridor(60);
    expect(new Set(asked)).toEqual(new Set([DAY_MS]));
  });
});

describe('the corridor of a record', () => {
  it('is none before the batch and after its plan', async () => {
    const { at } = await corridor(60);
    expect(at(closedMs - 1)).toBeNull();
    expect(at(window.toMs)).toBeNull();
  });

  it('gives the same whatever was asked before', async () => {
    const { at } = await corridor(60);
    const instants = [0, 5, 0, 130, 5, 130, 0].map((hours) => closedMs + hours * HOUR_MS);
    const { at: fresh } = await corridor(60);
    const alone = new Map([0, 5, 130].map((hours) => [closedMs + hours * HOUR_MS, fresh(closedMs + hours * HOUR_MS)]));
    expect(instants.map((ms) => at(ms))).toEqual(instants.map((ms) => alone.get(ms)));
  });
});
