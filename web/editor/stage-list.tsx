// The stages of a draft: all beside each other with the names of their rows, or the one that is looked at.
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { stageNames } from '../../shared/healing/stage-name.ts';
import { words } from '../late-strings.ts';
import { withNewStage, withoutStage, withStage } from './edit-draft.ts';
import { RowHeads } from './row-heads.tsx';
import { StageFields } from './stage-fields.tsx';

interface Props {
  readonly draft: ProfileDocument;
  readonly focus: number | null;
  readonly onDraft: (draft: ProfileDocument) => void;
}

export function StageList({ draft, focus, onDraft }: Props) {
  const missing = stageNames.filter((name) => !draft.stages.some(({ stage }) => stage === name));
  return (
    <>
      <div class={focus === null ? 'stages' : 'stages is-one'} style={{ '--stages': draft.stages.length }}>
        {focus === null && <RowHeads stages={draft.stages} />}
        {draft.stages.map((plan, index) =>
          focus !== null && focus !== index ? null : (
            <StageFields
              key={plan.stage}
              where={`/stages/${index}`}
              at={index + 1}
              plan={plan}
              onPlan={(next) => onDraft(withStage(draft, index, next))}
              onRemove={plan.stage === 'closed' ? undefined : () => onDraft(withoutStage(draft, index))}
            />
          ),
        )}
      </div>
      <div class="form-acts stage-acts">
        {missing.map((name) => (
          <button key={name} type="button" onClick={() => onDraft(withNewStage(draft, name))}>
            {words.editor.addStage(words.editor.stageNames[name])}
          </button>
        ))}
      </div>
    </>
  );
}
