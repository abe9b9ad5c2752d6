// What a series becomes on the strip: gaps, marks, table rows, words; and a profile drawn as a plan.
import { describe, expect, test } from 'vitest';
import type { ChartEvent, ClimateSeries } from '../../shared/api/chambers.ts';
import { standardProfiles } from '../../shared/healing/standard-profiles.ts';
import { eventsWithin, eventWords } from '../../web/strip/event-words.ts';
import { forecastAt } from '../../web/strip/forecast-at.ts';
import { rowLayout } from '../../web/strip/lanes.ts';
import { type Mark, markOf } from '../../web/strip/marks.ts';
import { laneOfRule } from '../../web/strip/paint-alarms.ts';
import { flagPlaces } from '../../web/strip/paint-doubted.ts';
import { placeMarks } from '../../web/strip/paint-marks.ts';
import { nominalSpans, planSeries } from '../../web/strip/plan-series.ts';
import { drawnColumn, gapRuns, heardIndex, stripData } from '../../web/strip/strip-data.ts';
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
    silenceSeconds: 900,
    corridor: {
      temperature: { low: none, high: none, highHigh: none },
      humidity: { low: [90, 90, 90, 90, 90, 90], high: [100, 100, 100, 100, 100, 100] },
    },
    events,
    forecast: null,
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

describe('readings that come more seldom than there are buckets', () => {
  const slow = stripData(
    {
      ...sampleSeries(),
      ...{ bucketSeconds: 300, now: '2026-03-02T07:30:00Z' },
      temperature: { min: none, mean: [20, null, null, 21, null, null], max: none },
      humidity: { min: none, mean: none, max: none },
    },
    null,
  );
  test('are joined as long as the probe may be silent, and no gap is said to be there', () => {
    expect(drawnColumn(slow.series.temperature.mean, slow)).toEqual([
      20,
      undefined,
      undefined,
      21,
      undefined,
      undefined,
    ]);
    expect(gapRuns(slow)).toEqual([]);
    expect(tableRows(slow, 60).map(({ isGap }) => isGap)).not.toContain(true);
  });
  test('and are not beyond it', () => {
    const strict = { ...slow, series: { ...slow.series, silenceSeconds: 599 } };
    expect(drawnColumn(strict.series.temperature.mean, strict)).toEqual(strict.series.temperature.mean);
    expect(gapRuns(strict)).toEqual([
      { from: 1, to: 3 },
      { from: 4, to: 6 },
    ]);
  });
  test('the values of a place between two of them are those of the nearest', () => {
    expect([0, 1, 2, 3].map((index) => heardIndex(slow, index))).toEqual([0, 0, 3, 3]);
  });
});

describe('an alarm stands in the lane of what it speaks of', () => {
  test.each([
    ['heat', rowLayout.temperature],
    ['heat-ahead', rowLayout.temperature],
    ['dry', rowLayout.humidity],
    ['vpd', rowLayout.humidity],
    ['silent-probe', rowLayout.marks],
    ['check-overdue', rowLayout.marks],
  ])('%s', (rule, lane) => {
    expect(laneOfRule(rule, rowLayout)).toBe(lane);
  });
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

describe('marks that would lie on each other', () => {
  const log = (atSec: number, shape: Mark['shape']): Mark => ({ atSec, shape, row: 'log' });
  const placed = (marks: readonly Mark[], levels: 1 | 2) =>
    placeMarks(marks, (sec) => sec, 10, levels).map(({ x, mark, level }) => [x, mark.shape, level]);
  test('one of the same shape is one mark', () => {
    expect(placed([log(0, 'drop'), log(4, 'drop'), log(11, 'drop')], 2)).toEqual([
      [0, 'drop', 0],
      [11, 'drop', 0],
    ]);
  });
  test('one of another shape goes a level down, where there is one', () => {
    const marks = [log(0, 'drop'), log(4, 'down'), log(20, 'up')];
    expect(placed(marks, 2).map(([, , level]) => level)).toEqual([0, 1, 0]);
    expect(placed(marks, 1).map(([, , level]) => level)).toEqual([0, 0, 0]);
  });
  test('two checks side by side are both there', () => {
    const checks = [0, 3].map((atSec): Mark => ({ atSec, shape: 'ring', row: 'check' }));
    expect(placed(checks, 1)).toHaveLength(2);
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

test('the table of a window has its buckets only', () => {
  const data = stripData(sampleSeries(), null);
  const [eight, nine] = [Date.parse('2026-03-02T08:00:00Z') / 1000, Date.parse('2026-03-02T09:30:00Z') / 1000];
  expect(tableRows(data, 60, { fromSec: eight, toSec: nine }).map(({ startSec }) => startSec)).toEqual([
    ...[eight, Date.parse('2026-03-02T09:00:00Z') / 1000],
  ]);
  expect(tableRows(data, 60, { fromSec: nine + 86_400, toSec: nine + 90_000 })).toEqual([]);
});

test('flags stand where readings were doubted, and none is drawn over another', () => {
  const data = stripData({ ...sampleSeries(), badShare: [0, 0.5, 1, 0.1, null, 0] }, null);
  expect(flagPlaces(data, 0)).toEqual(data.middles.slice(1, 4));
  expect(flagPlaces(data, 2 * 3600)).toEqual([data.middles[1], data.middles[3]]);
});

describe('the forecast at an instant', () => {
  const from = '2026-03-02T10:30:00Z';
  const cone = { from, minutes: [0, 10, 20], low: [20, 21, 20], middle: [20, 22, 24], high: [20, 23, 28] };
  const at = (minutes: number) => forecastAt(cone, Date.parse(from) / 1000 + minutes * 60);
  test.each<[number, object | null, string]>([
    [0, { low: 20, middle: 20, high: 20 }, 'its beginning'],
    [5, { low: 20.5, middle: 21, high: 21.5 }, 'half way'],
    [20, { low: 20, middle: 24, high: 28 }, 'its end'],
    [-1, null, 'before it'],
    [21, null, 'further than it looks'],
  ])('%i min: %j (%s)', (minutes, expected) => {
    expect(at(minutes)).toEqual(expected);
  });
  test('there is none where none was sent', () => {
    expect(forecastAt(null, 0)).toBeNull();
  });
});

describe('events of a window', () => {
  const alarm: ChartEvent = { ...events[2], until: '2026-03-02T10:00:00Z' } as ChartEvent;
  const sec = (time: string) => Date.parse(`2026-03-02T${time}Z`) / 1000;
  test('an alarm that reaches into it belongs to it, a mark before it does not', () => {
    expect(eventsWithin([...events.slice(0, 2), alarm], sec('09:30:00'), sec('12:00:00'))).toEqual([events[1], alarm]);
  });
  test('an alarm that is over does not', () => {
    expect(eventsWithin([alarm], sec('10:00:01'), sec('12:00:00'))).toEqual([]);
  });
  test.each([
    [{ kind: 'check', what: 'overdue', label: 'Film wet?' }, 'Film wet? Missed'],
    [{ kind: 'alarm', what: 'heat', label: 'Heat' }, 'Too hot'],
  ] as const)('%j is said as "%s"', (given, said) => {
    expect(eventWords({ at: '', until: null, ...given }, 0, 'UTC')).toBe(said);
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
