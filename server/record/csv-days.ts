// The statistics of a record as rows of its table: one figure a row, so that a spreadsheet can filter and pivot them.
import type { BatchRecord, RecordSpan } from '../../shared/api/record.ts';
import type { CsvRow } from './csv-line.ts';

/** Every figure of every healing day, of every stage, then of the whole time since closing. */
export function dayRows({ days, stageFigures, whole }: BatchRecord): CsvRow[] {
  return [
    ...days.flatMap((day) => spanRows(day, `day ${day.day}`)),
    ...stageFigures.flatMap((stage) => spanRows(stage, `stage ${stage.stage}`)),
    ...(whole === null ? [] : spanRows(whole, 'whole')),
  ];
}

function spanRows(span: RecordSpan, state: string): CsvRow[] {
  const { temperature, humidity } = span;
  const figures: [string, number | null][] = [
    ['temperature_mean_c', temperature.mean],
    ['temperature_min_c', temperature.min],
    ['temperature_max_c', temperature.max],
    ['humidity_mean_pct', humidity.mean],
    ['humidity_min_pct', humidity.min],
    ['humidity_max_pct', humidity.max],
    ...Object.entries(span.minutesAbove).map(([limit, value]): [string, number] => [`minutes_above_${limit}_c`, value]),
    ...Object.entries(span.degreeHoursAbove).map(([limit, value]): [string, number] => [
      `degree_hours_above_${limit}_c`,
      value,
    ]),
    ['vpd_kpa_hours', span.vpdKpaHours],
    ['unknown_hours', span.unknownHours],
    ['temperature_inside_corridor_share', span.insideCorridor.temperature],
    ['humidity_inside_corridor_share', span.insideCorridor.humidity],
    ['temperature_mean_plus_minus_c', span.plusMinus.temperature],
    ['humidity_mean_plus_minus_pct', span.plusMinus.humidity],
    ['vpd_kpa_hours_plus_minus', span.plusMinus.vpdKpaHours],
  ];
  return figures.map((figure) => figureRow(span, state, figure));
}

function figureRow({ from, to }: RecordSpan, state: string, [what, value]: [string, number | null]): CsvRow {
  return {
    section: 'day',
    atMs: Date.parse(from),
    what,
    state,
    value,
    note: value === null ? 'not known' : `until ${to}`,
  };
}
