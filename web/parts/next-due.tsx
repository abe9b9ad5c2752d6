// The next thing that is due in a chamber, with its time.
import type { ChamberView } from '../../shared/api/chambers.ts';
import { words } from '../strings.ts';
import { dayAndTime } from '../when.ts';

interface Props {
  readonly chamber: ChamberView;
  readonly nowMs: number;
  readonly zone: string;
}

function dueWords(status: 'to-come' | 'due' | 'overdue', time: string): string {
  if (status === 'overdue') return words.checks.overdueSince(time);
  return status === 'due' ? words.checks.dueSince(time) : time;
}

export function NextDue({ chamber, nowMs, zone }: Props) {
  const due = chamber.nextDue;
  if (chamber.batch === null) return null;
  if (due === null) return <p class="next">{words.overview.nothingDue}</p>;
  return (
    <p class="next">
      <b>{words.overview.next}</b> <span>{due.question}</span>{' '}
      <time dateTime={due.dueAt}>{dueWords(due.status, dayAndTime(Date.parse(due.dueAt), nowMs, zone))}</time>
    </p>
  );
}
