// Writes a plan: the strip beside its numbers. A number changed redraws the strip at once, a handle dragged changes the number, and an
// impossible plan says why where it is impossible. Nothing typed is lost when the service says no.
import { useMemo, useRef, useState } from 'preact/hooks';
import { draftFaults } from '../../shared/healing/draft-faults.ts';
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { ApiProblem, type FieldFault } from '../api.ts';
import { words } from '../late-strings.ts';
import { PageHead } from '../parts/page-head.tsx';
import { planFaultWords } from '../plan-fault-words.ts';
import '../style/editor.css';
import '../style/plan-lines.css';
import '../style/plan-stages.css';
import { Bench } from './bench.tsx';
import { CheckList } from './check-fields.tsx';
import { DraftFaults } from './draft-field.tsx';
import { readableDocument, storedDocument } from './edited-texts.ts';
import { FaultSummary } from './fault-summary.tsx';
import { PlanNames, PlanPace } from './plan-fields.tsx';
import { Glossary } from './row-heads.tsx';
import { SaveBar } from './save-bar.tsx';
import { StageList } from './stage-list.tsx';

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

/** Saves one at a time; what the service says against it stays until the plan is changed. */
function useSaving(onSave: Props['onSave']) {
  const [problem, setProblem] = useState<ApiProblem>();
  const [isBusy, setBusy] = useState(false);
  const save = async (draft: ProfileDocument) => {
    if (isBusy || draftFaults(draft).length > 0) return;
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
  return { problem, isBusy, save, forgetProblem: () => setProblem(undefined) };
}

export function ProfileEditor({ title, document, act, onSave, onCancel, remark }: Props) {
  const [draft, setDraft] = useState(() => readableDocument(document));
  const [focus, setFocus] = useState<number | null>(null);
  const saving = useSaving(onSave);
  const found = useMemo(() => draftFaults(draft), [draft]);
  const drawn = useRef(draft);
  if (!found.some(({ kind }) => undrawable.has(kind))) drawn.current = draft;
  const faults: readonly FieldFault[] = [...found.map(planFaultWords), ...(saving.problem?.faults ?? [])];
  const change = (next: ProfileDocument) => {
    // The stage that was looked at may have another place now, or none.
    if (next.stages.length !== draft.stages.length) setFocus(null);
    setDraft(next);
    saving.forgetProblem();
  };
  const goTo = (where: string) => {
    if (focus !== null && !where.startsWith(`/stages/${focus}/`)) setFocus(null);
  };
  return (
    <main id="main" class="plain editor">
      <DraftFaults.Provider value={faults}>
        <div class="editor-head">
          <PageHead title={title}>
            <p>
              {words.editor.intro} <span class="keys">{words.editor.keys}</span>
            </p>
            {remark !== undefined && <p class="details">{remark}</p>}
          </PageHead>
          <PlanNames draft={draft} onDraft={change} />
        </div>
        <Bench draft={draft} drawn={drawn.current} focus={focus} onFocus={setFocus} onDraft={change} />
        <Glossary />
        <StageList draft={draft} focus={focus} onDraft={change} />
        {focus === null ? (
          <div class="plan-rest">
            <PlanPace draft={draft} onDraft={change} />
            <CheckList draft={draft} onDraft={change} />
          </div>
        ) : (
          <p class="quiet-line">{words.editor.restUnder}</p>
        )}
        <SaveBar
          act={act}
          isBusy={saving.isBusy}
          canSave={found.length === 0}
          problem={saving.problem?.message}
          onSave={() => void saving.save(draft)}
          onCancel={onCancel}
        >
          <FaultSummary draft={draft} faults={faults} onGo={goTo} />
        </SaveBar>
      </DraftFaults.Provider>
    </main>
  );
}
