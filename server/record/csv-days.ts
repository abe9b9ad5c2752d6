// The statistics of a record as rows of its table: one figure a row, so that a spreadsheet can filter and pivot them.
import type { BatchRecord, RecordDay } from '../../shared/api/record.ts';
import type { CsvRow } from './csv-line.ts';

/** Every figure of every healing day, then of the whole time since closing. */
export function dayRows({ days, whole }: BatchRecord): CsvRow[] {
  const rows = days.flatMap((day) => spanRows(day, `day ${day.day}`));
  if (whole === null) return rows;
  const { temperature, humidity } = whole.insideCorridor;
  const shares: [string, number | null][] = [
    ['temperature_inside_corridor_share', temperature],
    ['humidity_inside_corridor_share', humidity],
  ];
  return [...rows, ...spanRows(whole, 'whole'), ...shares.map((figure) => figureRow(whole, 'whole', figure))];
}

type Span = Omit<RecordDay, 'day'>;

function spanRows(span: Span, state: string): CsvRow[] {
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
  ];
  return figures.map((figure) => figureRow(span, state, figure));
}

function figureRow({ from, to }: Span, state: string, [what, value]: [string, number | null]): CsvRow {
  return {
    section: 'day',
    atMs: Date.parse(from),
    what,
    state,
    value,
    note: value === null ? 'not known' : `until ${to}`,
  };
}
