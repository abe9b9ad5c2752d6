// The advice that follows a "no": it stands until somebody closes it.

import { closeFirstAid, firstAidOf } from '../first-aid.ts';
import { planText } from '../plan-text.ts';
import { words } from '../strings.ts';

export function FirstAidNote({ batchId }: { readonly batchId: string }) {
  const aid = firstAidOf(batchId);
  if (aid === undefined) return null;
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
