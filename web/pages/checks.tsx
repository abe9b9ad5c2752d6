// The checks of a batch: those due now with yes and no, then those to come, then those answered.

import type { CheckView } from '../../shared/api/batches.ts';
import { calls } from '../calls.ts';
import { slowNowMs } from '../clock.ts';
import { ActButton } from '../parts/act-button.tsx';
import { CheckAnswer } from '../parts/check-answer.tsx';
import { dueWords } from '../parts/next-due.tsx';
import { ShapeMark } from '../parts/shape-mark.tsx';
import { planText } from '../plan-text.ts';
import { mayAct, zone } from '../session.ts';
import { words } from '../strings.ts';
import { dayAndTime } from '../when.ts';

interface Props {
  readonly batchId: string;
  readonly checks: readonly CheckView[];
  readonly onAnswered: () => void;
}

const soonShown = 3;

function useTime(): (at: string) => string {
  const nowMs = slowNowMs.value;
  const siteZone = zone.value;
  return (at) => dayAndTime(Date.parse(at), nowMs, siteZone);
}

function DueCheck({
  batchId,
  check,
  onAnswered,
}: {
  readonly batchId: string;
  readonly check: CheckView;
  readonly onAnswered: () => void;
}) {
  const time = useTime();
  const isOverdue = check.status === 'overdue';
  return (
    <li class="check is-due">
      <p class="sentence">
        <ShapeMark shape={isOverdue ? 'overdue' : 'due'} />
        <span>
          {isOverdue ? words.checks.missed : words.checks.dueNow}: {planText(check.question)}{' '}
          <small>{dueWords(isOverdue ? 'overdue' : 'due', time(check.dueAt))}</small>
        </span>
      </p>
      {mayAct.value && <CheckAnswer batchId={batchId} check={check} onAnswered={onAnswered} />}
    </li>
  );
}

function answeredWords(check: CheckView, time: (at: string) => string): string {
  const person = check.answeredBy ?? '';
  const at = check.answeredAt === null ? '' : time(check.answeredAt);
  return check.answer === 'no' ? words.checks.answeredNo(person, at) : words.checks.answeredYes(person, at);
}

function OtherChecks({ checks }: { readonly checks: readonly CheckView[] }) {
  const time = useTime();
  const coming = checks.filter((check) => check.status === 'to-come').slice(0, soonShown);
  const answered = checks.filter((check) => check.status === 'answered').reverse();
  return (
    <>
      {coming.length > 0 && (
        <>
          <h3>{words.checks.toCome}</h3>
          <ul class="check-list">
            {coming.map((check) => (
              <li key={check.checkId}>
                <time dateTime={check.dueAt}>{time(check.dueAt)}</time> {planText(check.question)}
              </li>
            ))}
          </ul>
        </>
      )}
      {answered.length > 0 && (
        <details>
          <summary>
            {words.checks.answered} ({answered.length})
          </summary>
          <ul class="check-list">
            {answered.map((check) => (
              <li key={check.checkId}>
                {planText(check.question)} <span class="details">{answeredWords(check, time)}</span>
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

/** So many checks of one instant are a list to go through, like that before the first tray goes in. */
const listFrom = 3;

/** Of the checks that are due, those that fell due together and nobody has answered yet; a list whose first are answered stays one. */
function listOf(due: readonly CheckView[], all: readonly CheckView[]): readonly CheckView[] {
  const sameTime = (check: CheckView) => all.filter(({ dueAt }) => dueAt === check.dueAt);
  return due.filter((check) => sameTime(check).length >= listFrom && check.dueAt === due[0]?.dueAt);
}

interface ListProps extends Omit<Props, 'checks'> {
  readonly list: readonly CheckView[];
  /** None of the list is answered yet. */
  readonly isWhole: boolean;
}

function WholeList({ batchId, list, isWhole, onAnswered }: ListProps) {
  const answerAll = async () => {
    for (const { checkId } of list) await calls.answerCheck(batchId, checkId, 'yes');
  };
  return (
    <div class="acts">
      <p class="details">{words.checks.together(list.length)}</p>
      <ActButton kind="plain" work={answerAll} done={words.checks.savedAll} onDone={onAnswered}>
        {isWhole ? words.checks.yesToAll(list.length) : words.checks.yesToRest(list.length)}
      </ActButton>
    </div>
  );
}

export function Checks({ batchId, checks, onAnswered }: Props) {
  const due = checks.filter((check) => check.status === 'due' || check.status === 'overdue');
  const list = listOf(due, checks);
  const isWhole = list.length === checks.filter(({ dueAt }) => dueAt === list[0]?.dueAt).length;
  return (
    <section aria-labelledby="checks">
      <h2 id="checks">{words.checks.title}</h2>
      {due.length === 0 && <p class="quiet-line">{words.checks.none}</p>}
      <ul class="check-due">
        {due.map((check) => (
          <DueCheck key={check.checkId} batchId={batchId} check={check} onAnswered={onAnswered} />
        ))}
      </ul>
      {mayAct.value && list.length > 1 && (
        <WholeList batchId={batchId} list={list} isWhole={isWhole} onAnswered={onAnswered} />
      )}
      <OtherChecks checks={checks} />
    </section>
  );
}
