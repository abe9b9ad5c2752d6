// The advice that follows a "no": it stands until somebody closes it.

import { closeFirstAid, firstAidOf } from '../first-aid.ts';
import { planText } from '../plan-text.ts';
import { words } from '../strings.ts';

interface Props {
  readonly batchId: string;
  /** The advice that stands above it: what that says is not said again. */
  readonly said: string;
}

export function FirstAidNote({ batchId, said }: Props) {
  const aid = firstAidOf(batchId);
  if (aid === undefined || planText(aid.ifNo) === said) return null;
  return (
    <div class="first-aid" role="alert">
      <p>
        {planText(aid.question)} {words.checks.ifNo(planText(aid.ifNo))}
      </p>
      <button type="button" class="quiet" onClick={() => closeFirstAid(batchId)}>
        {words.acts.close}
      </button>
    </div>
  );
}
