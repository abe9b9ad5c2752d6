// The dated rows of the record's table that are not readings: alarms step by step, the log, the checks.
import type { BatchRecord, RecordAlarm, RecordCheck, RecordLogEntry } from '../../shared/api/record.ts';
import type { CsvRow } from './csv-line.ts';

export interface DatedRow extends CsvRow {
  readonly atMs: number;
}

/** All of them in order of time. */
export function eventRows({ alarms, log, checks }: BatchRecord): DatedRow[] {
  const rows = [...alarms.flatMap(alarmRows), ...log.map(logRow), ...checks.flatMap(checkRow)];
  return rows.sort((a, b) => a.atMs - b.atMs);
}

function alarmRows(alarm: RecordAlarm): DatedRow[] {
  return alarm.events.map(({ at, change, from, to, priority, limit, value, person, note }) => ({
    section: 'alarm',
    atMs: Date.parse(at),
    probe: alarm.probe,
    what: alarm.rule,
    state: change,
    value,
    person,
    note: joinNotes([limit === null ? '' : `limit ${limit}`, `priority ${priority}`, `${from} to ${to}`, note]),
  }));
}

function logRow({ at, kind, gapPercent, note, person }: RecordLogEntry): DatedRow {
  return { section: 'log', atMs: Date.parse(at), what: kind, value: gapPercent, person, note };
}

/** One row a check: when it was answered, else when it was due. */
function checkRow({ checkId, question, dueAt, status, answer, answeredAt, answeredBy, note }: RecordCheck): DatedRow[] {
  const at = answeredAt ?? dueAt;
  if (at === null) return [];
  const due = dueAt === null ? 'no longer in the plan' : `due ${dueAt}`;
  return [
    {
      section: 'check',
      atMs: Date.parse(at),
      what: checkId,
      state: answer ?? status,
      person: answeredBy,
      note: joinNotes([question ?? '', due, note]),
    },
  ];
}

function joinNotes(parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join('; ');
}
