// The next check of a chamber with its time. One that is due or was missed says so by word and shape.

import type { ChamberView } from '../../shared/api/chambers.ts';
import type { NextDue as Due } from '../chamber-state.ts';
import { planText } from '../plan-text.ts';
import { words } from '../strings.ts';
import { dayAndTime } from '../when.ts';
import { ShapeMark } from './shape-mark.tsx';

interface Props {
  readonly chamber: ChamberView;
  readonly nowMs: number;
  readonly zone: string;
}

const names: Record<Due['status'], string> = {
  'to-come': words.overview.next,
  due: words.checks.dueNow,
  overdue: words.checks.missed,
};

/** When a check is or was due, in the words of its status. */
export function dueWords(status: Due['status'], time: string): string {
  if (status === 'to-come') return time;
  return status === 'due' ? words.checks.dueSince(time) : words.checks.dueAt(time);
}

export function NextDue({ chamber, nowMs, zone }: Props) {
  const due = chamber.nextDue;
  if (chamber.batch === null) return null;
  if (due === null) return <p class="next">{words.overview.nothingDue}</p>;
  const isNow = due.status !== 'to-come';
  return (
    <p class={isNow ? 'next is-now' : 'next'}>
      {due.status !== 'to-come' && <ShapeMark shape={due.status} />} <b>{names[due.status]}</b>{' '}
      <span>{planText(due.question)}</span>{' '}
      <time dateTime={due.dueAt}>{dueWords(due.status, dayAndTime(Date.parse(due.dueAt), nowMs, zone))}</time>
    </p>
  );
}
