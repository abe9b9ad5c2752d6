// Yes or no to a check, in one tap. After a "no" the advice is kept for the batch.

import { calls } from '../calls.ts';
import type { NextDue } from '../chamber-state.ts';
import { noteAnswer } from '../first-aid.ts';
import { planText } from '../plan-text.ts';
import { words } from '../strings.ts';
import { ActButton } from './act-button.tsx';

interface Props {
  readonly batchId: string;
  readonly check: Pick<NextDue, 'checkId' | 'question' | 'ifNo'>;
  readonly onAnswered?: () => void;
}

export function CheckAnswer({ batchId, check, onAnswered }: Props) {
  // Said at once where the answer was given: the head of the page, where it stays, may be out of sight.
  const ifNo = planText(check.ifNo);
  const answered = (word: 'yes' | 'no') => {
    noteAnswer(batchId, check, word);
    onAnswered?.();
  };
  const answer = (word: 'yes' | 'no', kind: 'main' | 'plain', label: string) => (
    <ActButton
      kind={kind}
      label={label}
      work={() => calls.answerCheck(batchId, check.checkId, word)}
      done={word === 'no' && ifNo !== '' ? words.checks.ifNo(ifNo) : words.checks.saved}
      onDone={() => answered(word)}
    >
      {words.acts[word]}
    </ActButton>
  );
  return (
    <div class="acts answer">
      {answer('yes', 'main', words.checks.yesFor(planText(check.question)))}
      {answer('no', 'plain', words.checks.noFor(planText(check.question)))}
    </div>
  );
}
