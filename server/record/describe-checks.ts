// The checks of a batch with their answers; those that nobody answered are there too, and so is an answer to a check the plan no longer has.
import type { RecordCheck } from '../../shared/api/record.ts';
import { checkStatus, type PlannedCheck } from '../../shared/healing/checks.ts';
import { utcText } from '../../shared/units.ts';
import type { CheckAnswer } from '../store/store.ts';

/** In order of their due time; answers without a planned check come last. */
export function describeChecks(
  planned: readonly PlannedCheck[],
  answers: readonly CheckAnswer[],
  nowMs: number,
): RecordCheck[] {
  const answerOf = new Map(answers.map((answer) => [answer.checkId, answer]));
  const known = new Set(planned.map(({ checkId }) => checkId));
  return [
    ...planned.map((check) => describePlanned(check, answerOf.get(check.checkId) ?? null, nowMs)),
    ...answers.filter(({ checkId }) => !known.has(checkId)).map(describeUnplanned),
  ];
}

function describePlanned(check: PlannedCheck, answer: CheckAnswer | null, nowMs: number): RecordCheck {
  const status = checkStatus(check, answer, nowMs);
  return {
    checkId: check.checkId,
    question: check.question,
    dueAt: utcText(check.dueMs),
    status: status === 'overdue' ? 'missed' : status,
    ...describeAnswer(answer),
  };
}

function describeUnplanned(answer: CheckAnswer): RecordCheck {
  return { checkId: answer.checkId, question: null, dueAt: null, status: 'answered', ...describeAnswer(answer) };
}

function describeAnswer(answer: CheckAnswer | null) {
  if (answer === null) return { answer: null, answeredAt: null, answeredBy: null, note: '' };
  return { answer: answer.answer, answeredAt: utcText(answer.atMs), answeredBy: answer.person, note: answer.note };
}
