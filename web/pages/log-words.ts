// How a line of a batch's log is said. Pure.
import type { LogEntry } from '../../shared/api/batches.ts';
import { planText } from '../plan-text.ts';
import { words } from '../strings.ts';

/** As the service notes an answer: the question of the plan, the answer, and what the person added. */
const answered = /^(?<question>.+?) (?<answer>yes|no)(?<added>: .*)?$/s;

/** What was done. */
export function entryWords({ kind, gapPercent }: Pick<LogEntry, 'kind' | 'gapPercent'>): string {
  const gap = gapPercent === null ? '' : `, ${words.log.gapWords(gapPercent)}`;
  return `${words.logKinds[kind]}${gap}`;
}

/** What stands beside it: an answer in the reader's words, else what the person wrote. */
export function noteWords({ kind, note }: Pick<LogEntry, 'kind' | 'note'>): string {
  const parts = kind === 'check' ? answered.exec(note)?.groups : undefined;
  if (parts === undefined) return note;
  const { question = '', answer, added = '' } = parts;
  const said = words.chart.answers[answer === 'yes' ? 'yes' : 'no'];
  return `${words.chart.checkWas(planText(question), said)}${added}`;
}
