// Checks as they stand in a record, on both sides of due and overdue.
import { describe, expect, it } from 'vitest';
import { describeChecks } from '../../../server/record/describe-checks.ts';
import type { CheckAnswer } from '../../../server/store/store.ts';
import type { PlannedCheck } from '../../../shared/healing/checks.ts';

const check: PlannedCheck = {
  checkId: 'film-wet.1',
  id: 'film-wet',
  question: 'Wet?',
  ifNo: 'Mist.',
  dueMs: 1000,
  overdueMs: 2000,
  stage: 'closed',
};
const answer: CheckAnswer = {
  batchId: 'b',
  checkId: 'film-wet.1',
  answer: 'no',
  atMs: 5000,
  person: 'Noor',
  note: 'dry',
};

const unanswered: [string, number, string][] = [
  ['a check before its time is to come', 999, 'to-come'],
  ['from its time on it is due', 1000, 'due'],
  ['until just before it is overdue', 1999, 'due'],
  ['once overdue and unanswered it was missed', 2000, 'missed'],
];

describe('describeChecks', () => {
  it.each(unanswered)('%s', (_, nowMs, status) => {
    expect(describeChecks([check], [], nowMs)[0]).toMatchObject({ status, answer: null, answeredBy: null });
  });

  it('shows an answer however late it came', () => {
    expect(describeChecks([check], [answer], 9000)).toEqual([
      {
        checkId: 'film-wet.1',
        question: 'Wet?',
        dueAt: '1970-01-01T00:00:01Z',
        status: 'answered',
        answer: 'no',
        answeredAt: '1970-01-01T00:00:05Z',
        answeredBy: 'Noor',
        note: 'dry',
      },
    ]);
  });

  it('keeps an answer to a check that the plan no longer has', () => {
    const found = describeChecks([check], [{ ...answer, checkId: 'film-wet.9' }], 1000);
    expect(found.map(({ checkId, status, dueAt }) => [checkId, status, dueAt === null])).toEqual([
      ['film-wet.1', 'due', false],
      ['film-wet.9', 'answered', true],
    ]);
  });
});
