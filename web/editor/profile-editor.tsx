// Writes a plan: the strip beside its numbers. A number changed redraws the strip at once, a handle dragged changes the number, and an
// impossible plan says why where it is impossible. Nothing typed is lost when the service says no.
import { useMemo, useRef, useState } from 'preact/hooks';
import { draftFaults } from '../../shared/healing/draft-faults.ts';
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { stageNames } from '../../shared/healing/stage-name.ts';
import { ApiProblem, type FieldFault } from '../api.ts';
import { words } from '../late-strings.ts';
import { PageHead } from '../parts/page-head.tsx';
import { planFaultWords } from '../plan-fault-words.ts';
import { CheckList } from './check-fields.tsx';
import { DraftFaults } from './draft-field.tsx';
import { withNewStage, withoutStage, withStage } from './edit-draft.ts';
import { readableDocument, storedDocument } from './edited-texts.ts';
import { EditorStrip } from './editor-strip.tsx';
import { FaultSummary } from './fault-summary.tsx';
import { PlanNames, PlanPace } from './plan-fields.tsx';
import { StageFields } from './stage-fields.tsx';

interface Props {
  readonly title: string;
  readonly document: ProfileDocument;
  /** What the button that saves says. */
  readonly act: string;
  /** Saves; a refusal is shown and everything typed is kept. */
  readonly onSave: (document: ProfileDocument) => Promise<void>;
  readonly onCancel: () => void;
  /** What to know before saving. */
  readonly remark?: string;
}

/** Faults of hours and numbers: with one of them there is nothing to draw. */
const undrawable = new Set([
  'no-number',
  'no-whole-number',
  'stage-hours',
  'end-hours',
  'stage-order',
  'stage-twice',
  'bounds',
]);

export function ProfileEditor({ title, document, act, onSave, onCancel, remark }: Props) {
  const [draft, setDraft] = useState(() => readableDocument(document));
  const [focus, setFocus] = useState<number | null>(null);
  const [problem, setProblem] = useState<ApiProblem>();
  const [isBusy, setBusy] = useState(false);
  const found = useMemo(() => draftFaults(draft), [draft]);
  const drawn = useRef(draft);
  if (!found.some(({ kind }) => undrawable.has(kind))) drawn.current = draft;
  const faults: readonly FieldFault[] = [...found.map(planFaultWords), ...(problem?.faults ?? [])];
  const change = (next: ProfileDocument) => {
    // The stage that was looked at may have another place now, or none.
    if (next.stages.length !== draft.stages.length) setFocus(null);
    setDraft(next);
    setProblem(undefined);
  };
  const save = async () => {
    if (isBusy || found.length > 0) return;
    setBusy(true);
    try {
      await onSave(storedDocument(draft));
    } catch (caught) {
      if (!(caught instanceof ApiProblem)) throw caught;
      setProblem(caught);
    } finally {
      setBusy(false);
    }
  };
  return (
    <main id="main" class="plain editor">
      <PageHead title={title}>
        <p>{words.editor.intro}</p>
      </PageHead>
      <DraftFaults.Provider value={faults}>
        <PlanNames draft={draft} onDraft={change} />
        <div class="editor-bench">
          <Views draft={draft} focus={focus} onFocus={setFocus} />
          <EditorStrip draft={draft} drawn={drawn.current} focus={focus} onDraft={change} />
        </div>
        <p class="details">{words.editor.keys}</p>
        <Stages draft={draft} focus={focus} onDraft={change} />
        <PlanPace draft={draft} onDraft={change} />
        <CheckList draft={draft} onDraft={change} />
        <FaultSummary draft={draft} faults={faults} onGo={() => setFocus(null)} />
        {problem !== undefined && (
          <p class="form-problem" role="alert">
            {problem.message}
          </p>
        )}
        {remark !== undefined && <p class="details">{remark}</p>}
        <div class="form-acts">
          <button
            type="button"
            class="main"
            aria-busy={isBusy}
            aria-disabled={found.length > 0}
            onClick={() => void save()}
          >
            {act}
          </button>
          <button type="button" class="plain" onClick={onCancel}>
            {words.acts.cancel}
          </button>
        </div>
      </DraftFaults.Provider>
    </main>
  );
}

interface ViewProps {
  readonly draft: ProfileDocument;
  readonly focus: number | null;
  readonly onFocus: (focus: number | null) => void;
}

/** Which part of the plan is on the bench: all of it, or one stage with handles at its limits. */
function Views({ draft, focus, onFocus }: ViewProps) {
  return (
    <fieldset class="views">
      <legend class="unseen">{words.editor.view}</legend>
      <button type="button" aria-pressed={focus === null} onClick={() => onFocus(null)}>
        {words.editor.whole}
      </button>
      {draft.stages.map(({ stage }, index) => (
        <button key={stage} type="button" aria-pressed={focus === index} onClick={() => onFocus(index)}>
          {words.editor.stageNames[stage]}
        </button>
      ))}
    </fieldset>
  );
}

interface StagesProps {
  readonly draft: ProfileDocument;
  readonly focus: number | null;
  readonly onDraft: (draft: ProfileDocument) => void;
}

function Stages({ draft, focus, onDraft }: StagesProps) {
  const missing = stageNames.filter((name) => !draft.stages.some(({ stage }) => stage === name));
  return (
    <>
      <div class={focus === null ? 'stages' : 'stages is-one'}>
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
      <div class="form-acts">
        {missing.map((name) => (
          <button key={name} type="button" onClick={() => onDraft(withNewStage(draft, name))}>
            {words.editor.addStage(words.editor.stageNames[name])}
          </button>
        ))}
      </div>
    </>
  );
}
