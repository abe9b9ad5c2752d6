// Yes or no to a check, in one tap.
import { calls } from '../calls.ts';
import { words } from '../strings.ts';
import { ActButton } from './act-button.tsx';

interface Props {
  readonly batchId: string;
  readonly checkId: string;
  readonly question: string;
  readonly onAnswered?: (answer: 'yes' | 'no') => void;
}

export function CheckAnswer({ batchId, checkId, question, onAnswered }: Props) {
  const answer = (word: 'yes' | 'no', kind: 'main' | 'plain', label: string) => (
    <ActButton
      kind={kind}
      label={label}
      work={() => calls.answerCheck(batchId, checkId, word)}
      done={words.checks.saved}
      onDone={() => onAnswered?.(word)}
    >
      {words.acts[word]}
    </ActButton>
  );
  return (
    <div class="acts answer">
      {answer('yes', 'main', words.checks.yesFor(question))}
      {answer('no', 'plain', words.checks.noFor(question))}
    </div>
  );
}
