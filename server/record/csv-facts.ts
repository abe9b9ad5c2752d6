// The rows of the record's table that come before everything dated: the batch, its probes, its days, excursions and gaps.
import type { CalibrationView } from '../../shared/api/calibrations.ts';
import type { BatchRecord, QualityCounts, RecordProbe } from '../../shared/api/record.ts';
import { dayRows } from './csv-days.ts';
import type { CsvRow } from './csv-line.ts';

/** In the order of the table: batch facts, days, excursions, gaps. */
export function factRows(record: BatchRecord): CsvRow[] {
  return [
    ...batchRows(record),
    ...planRows(record),
    ...record.probes.flatMap(probeRows),
    ...filmRows(record),
    ...dayRows(record),
    ...excursionRows(record),
    ...gapRows(record),
  ];
}

/** Milliseconds of a time in the record. */
export function msOf(time: string | null): number | null {
  return time === null ? null : Date.parse(time);
}

function batchRows({ site, batch, profile, madeAt, version, computation }: BatchRecord): CsvRow[] {
  const text = (what: string, note: string): CsvRow => ({ section: 'batch', atMs: null, what, note });
  const number = (what: string, value: number | null): CsvRow => ({ section: 'batch', atMs: null, what, value });
  const time = (what: string, at: string | null): CsvRow => ({ section: 'batch', atMs: msOf(at), what });
  return [
    text('site', site.name),
    text('zone', site.zone),
    number('altitude_m', site.altitudeM),
    text('batch', batch.code),
    text('batch_id', batch.id),
    text('chamber', batch.chamberName),
    text('scion', batch.scion),
    text('rootstock', batch.rootstock),
    text('method', batch.method),
    number('trays', batch.trays),
    number('plants', batch.plants),
    time('opened', batch.openedAt),
    time('closed', batch.closedAt),
    time('finished', batch.finishedAt),
    number('taken_plants', batch.takenPlants),
    number('take', batch.take),
    text('profile', `${profile.document.name} (${profile.id}, version ${profile.version})`),
    { ...time('record_made', madeAt), note: `Takewell ${version}` },
    ...computation.map((sentence) => text('computation', sentence)),
    text('flags', '1 pass, 2 not evaluated, 3 suspect, 4 fail, 9 missing (QARTOD)'),
  ];
}

function planRows({ stages, holds, moves }: BatchRecord): CsvRow[] {
  const stageRow = (what: string, { stage, startsAt, endsAt }: BatchRecord['stages']['planned'][number]): CsvRow => ({
    section: 'batch',
    atMs: msOf(startsAt),
    what,
    state: stage,
    note: until(endsAt),
  });
  return [
    ...stages.planned.map((span) => stageRow('stage_planned', span)),
    ...stages.actual.map((span) => stageRow('stage_actual', span)),
    ...holds.map(({ from, to }): CsvRow => ({ section: 'batch', atMs: msOf(from), what: 'hold', note: until(to) })),
    ...moves.map(({ stage, at }): CsvRow => ({ section: 'batch', atMs: msOf(at), what: 'moved_on', state: stage })),
  ];
}

function probeRows(one: RecordProbe): CsvRow[] {
  const row = (what: string, value: number | null, state = ''): CsvRow => ({
    section: 'batch',
    atMs: msOf(one.from),
    probe: one.probe,
    place: one.place,
    what,
    state,
    value,
  });
  const flagRows = (quantity: string, counts: QualityCounts) =>
    Object.entries(counts).map(([flag, value]) => row(`${quantity}_readings`, value, flag));
  const origin = `${until(one.to)}; ${one.id}, node ${one.node}, address "${one.address}"`;
  return [
    { ...row('readings', one.readings), note: origin },
    row('late_readings', one.lateReadings),
    row('silence_minutes', one.silenceMinutes),
    ...flagRows('temperature', one.quality.temperature),
    ...flagRows('humidity', one.quality.humidity),
    ...disagreementRows(one, row),
    ...one.calibrations.map((entry) => calibrationRow(one, entry)),
  ];
}

/** Only of the canopy: nothing else has neighbours of the same air. */
function disagreementRows(
  { place, disagreement }: RecordProbe,
  row: (what: string, value: number | null) => CsvRow,
): CsvRow[] {
  if (place !== 'canopy') return [];
  return [
    row('disagreed_with_neighbours_hours', disagreement.hours),
    row('disagreed_at_most_c', disagreement.temperature),
    row('disagreed_at_most_pct', disagreement.humidity),
  ];
}

function filmRows({ film, batch }: BatchRecord): CsvRow[] {
  const row = (state: string, value: number): CsvRow => ({
    ...{ section: 'batch', atMs: msOf(batch.closedAt), what: 'film_expected_hours', state, value },
    note: 'since closing; an expectation from dew point and film or house air, never a look',
  });
  if (batch.closedAt === null) return [];
  return [row('wet', film.wetHours), row('dry', film.dryHours), row('unknown', film.unknownHours)];
}

function calibrationRow({ probe, place }: RecordProbe, entry: CalibrationView): CsvRow {
  const { from, kind, temperature, humidity, note, enteredAt, enteredBy } = entry;
  const parts = [
    temperature === null ? '' : `temperature ${signed(temperature.offset)} °C`,
    humidity === null ? '' : sayHumidity(humidity),
    `entered ${enteredAt}`,
    note,
  ];
  return {
    ...{ section: 'batch', atMs: msOf(from), probe, place, what: 'calibration', state: kind, person: enteredBy },
    note: parts.filter((part) => part !== '').join('; '),
  };
}

function sayHumidity(humidity: NonNullable<CalibrationView['humidity']>): string {
  if (!Array.isArray(humidity)) return `humidity ${signed(humidity.offset)} %RH`;
  const points = humidity.map(({ reference, measured }) => `${measured} read as ${reference}`);
  return `humidity ${points.join(', ')} %RH`;
}

function signed(value: number): string {
  return value < 0 ? String(value) : `+${value}`;
}

function excursionRows({ excursions }: BatchRecord): CsvRow[] {
  return excursions.map((one) => ({
    section: 'excursion',
    atMs: msOf(one.from),
    what: `${one.quantity}_${one.side}`,
    state: one.endedByGap ? 'ended by a gap' : one.stillOutside ? 'still outside' : 'returned',
    value: one.peak,
    note: `${until(one.to)}; ${one.minutes} min; value is the peak, at ${one.peakAt}; ${one.degreeHours} ${one.quantity === 'humidity' ? '%RH·h' : '°C·h'} outside`,
  }));
}

function gapRows({ gaps }: BatchRecord): CsvRow[] {
  return gaps.map(({ probe, from, to, minutes }) => ({
    section: 'gap',
    atMs: msOf(from),
    probe,
    what: 'nothing_heard_minutes',
    value: minutes,
    note: until(to),
  }));
}

function until(time: string | null): string {
  return time === null ? 'not ended' : `until ${time}`;
}
