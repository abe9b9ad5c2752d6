// How a line of a batch's log is said in the reader's language. Pure.
import type { LogEntry } from '../shared/api/log-entry.ts';
import { planText } from './plan-text.ts';
import { words } from './strings.ts';
import { dayAndTime } from './when.ts';

type Correction = NonNullable<LogEntry['changes']>[number];
type Note = Partial<Pick<LogEntry, 'check' | 'stage' | 'changes'>> & Pick<LogEntry, 'note'>;

/** What was done. */
export function entryWords({ kind, gapPercent }: Pick<LogEntry, 'kind' | 'gapPercent'>): string {
  const gap = gapPercent === null ? '' : `, ${words.log.gapWords(gapPercent)}`;
  return `${words.logKinds[kind]}${gap}`;
}

/** What stands beside it: what it is about, then what the person wrote; '' for nothing. Times are said as from `nowMs`, by the clock of `zone`. */
export function noteWords(entry: Note, nowMs: number, zone: string): string {
  const about = aboutWords(entry, nowMs, zone);
  if (about === '' || entry.note === '') return about + entry.note;
  return words.chart.noted(about, entry.note);
}

function aboutWords({ check, stage, changes }: Note, nowMs: number, zone: string): string {
  if (check) return words.chart.checkWas(planText(check.question), words.chart.answers[check.answer]);
  if (stage) return words.stages[stage];
  return (changes ?? []).map((change) => correctionWords(change, nowMs, zone)).join('; ');
}

function correctionWords({ field, before, after }: Correction, nowMs: number, zone: string): string {
  const { batch } = words;
  const { code, scion, rootstock, method, trays, plants } = batch;
  const names = { code, scion, rootstock, method, trays, plants, closedAt: batch.facts.closed };
  const said = (value: string | number) => {
    if (value === '') return words.log.empty;
    return field === 'closedAt' ? dayAndTime(Date.parse(String(value)), nowMs, zone) : String(value);
  };
  return words.log.corrected(names[field], said(before), said(after));
}
