// What a series becomes on the strip: gaps, marks, table rows, words; and a profile drawn as a plan.
import { describe, expect, test } from 'vitest';
import type { ChartEvent, ClimateSeries } from '../../shared/api/chambers.ts';
import { standardProfiles } from '../../shared/healing/standard-profiles.ts';
import { markOf } from '../../web/strip/marks.ts';
import { nominalSpans, planSeries } from '../../web/strip/plan-series.ts';
import { gapRuns, stripData } from '../../web/strip/strip-data.ts';
import { summarizeStrip } from '../../web/strip/summary.ts';
import { tableRows } from '../../web/strip/table-rows.ts';
import { spaced } from './plain-text.ts';

const none = [null, null, null, null, null, null];
const events: ChartEvent[] = [
  { at: '2026-03-02T08:00:00Z', until: null, kind: 'check', what: 'yes', label: 'Film wet?' },
  { at: '2026-03-02T12:00:00Z', until: null, kind: 'check', what: 'to-come', label: 'Scions erect?' },
  { at: '2026-03-02T09:00:00Z', until: null, kind: 'alarm', what: 'heat', label: 'Heat' },
];

/** Six hours from 07:00, now 10:30: heard at 07 and 08, nothing at 09, heard in the hour that runs. */
function sampleSeries(): ClimateSeries {
  return {
    ...{ startsAt: '2026-03-02T07:00:00Z', bucketSeconds: 3600, now: '2026-03-02T10:30:00Z' },
    temperature: {
      min: [20, 20.5, null, 21, null, null],
      mean: [21, 21.5, null, 22, null, null],
      max: [22, 29.4, null, 23, null, null],
    },
    humidity: {
      min: [94, 93, null, 92, null, null],
      mean: [95, 95, null, 94, null, null],
      max: [96, 97, null, 95, null, null],
    },
    ...{ houseHumidity: none, houseTemperature: none, badShare: [0, 0.5, null, 0, null, null] },
    corridor: {
      temperature: { low: none, high: none, highHigh: none },
      humidity: { low: [90, 90, 90, 90, 90, 90], high: [100, 100, 100, 100, 100, 100] },
    },
    events,
  };
}

test('only a finished bucket before now is a gap: what is ahead and what has just begun are not', () => {
  expect(gapRuns(stripData(sampleSeries(), null))).toEqual([{ from: 2, to: 3 }]);
  const unheard = {
    ...sampleSeries(),
    temperature: { min: none, mean: none, max: none },
    humidity: { min: none, mean: none, max: none },
  };
  expect(gapRuns(stripData(unheard, null))).toEqual([{ from: 0, to: 3 }]);
});

describe('marks', () => {
  const event = (kind: ChartEvent['kind'], what: string): ChartEvent => ({
    at: '1970-01-01T00:01:00Z',
    until: null,
    kind,
    what,
    label: '',
  });
  test.each([
    [event('check', 'yes'), { row: 'check', shape: 'full' }],
    [event('check', 'no'), { row: 'check', shape: 'crossed' }],
    [event('check', 'to-come'), { row: 'check', shape: 'ring' }],
    [event('check', 'overdue'), { row: 'check', shape: 'diamond' }],
    [event('log', 'mist'), { row: 'log', shape: 'drop' }],
    [event('log', 'hold'), { row: 'log', shape: 'stroke' }],
  ] as const)('%o', (given, mark) => {
    expect(markOf(given)).toEqual({ atSec: 60, ...mark });
  });
  test.each([event('log', 'check'), event('alarm', 'heat'), event('stage', 'closed')])('%o has none', (given) => {
    expect(markOf(given)).toBeNull();
  });
});

describe('the table', () => {
  test('keeps the spike when buckets are taken together, and a gap stays a gap', () => {
    const rows = tableRows(stripData(sampleSeries(), null), 2);
    expect(rows.map((row) => row.temperature)).toEqual([
      { min: 20, mean: 21.25, max: 29.4 },
      { min: 21, mean: 22, max: 23 },
    ]);
    expect(tableRows(stripData(sampleSeries(), null), 60)[2]?.temperature.mean).toBeNull();
  });
  test('ends with now', () => {
    expect(tableRows(stripData(sampleSeries(), null), 60)).toHaveLength(4);
  });
});

test('a strip in words names ends, alarms, checks and how much was not heard', () => {
  expect(spaced(summarizeStrip(stripData(sampleSeries(), null), 'UTC'))).toBe(
    '07:00 to 13:00. Temperature 20.0 to 29.4 °C, last 22.0. Humidity 92 to 97 %RH, last 94. ' +
      '25 % of the time so far nothing was heard. 1 alarm. 1 check answered, 1 to come.',
  );
});

describe.each(standardProfiles.map(({ document }) => [document.name, document] as const))(
  'the plan of %s',
  (_, document) => {
    const series = planSeries(document);
    test('has a corridor from closing to its end', () => {
      const { low, high } = series.corridor.humidity;
      expect(low).toHaveLength(document.endsAfterHours * 2);
      low.forEach((value, index) => {
        expect(value).not.toBeNull();
        expect(value ?? 0).toBeLessThanOrEqual(high[index] ?? 0);
      });
    });
    test('begins at closing and names its stages in order', () => {
      expect(nominalSpans(document)[0]?.startMs).toBe(0);
      expect(series.events.filter((event) => event.kind === 'stage').map((event) => event.what)).toEqual(
        document.stages.map((plan) => plan.stage).filter((stage) => stage !== 'loading'),
      );
    });
    test('has no check at or after its end', () => {
      const endMs = document.endsAfterHours * 3_600_000;
      const checks = series.events.filter((event) => event.kind === 'check');
      expect(checks.length).toBeGreaterThan(0);
      for (const check of checks) expect(Date.parse(check.at)).toBeLessThan(endMs);
    });
  },
);
