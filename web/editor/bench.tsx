// The bench of a plan: which part of it is looked at, and its strip, in sight while the numbers under it are changed.
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { words } from '../late-strings.ts';
import { EditorStrip } from './editor-strip.tsx';

interface ViewProps {
  readonly draft: ProfileDocument;
  readonly focus: number | null;
  readonly onFocus: (focus: number | null) => void;
}

/** On a phone the views are wider than the screen: the one that is come to by key is shown whole. */
function showWhole({ target }: FocusEvent): void {
  if (target instanceof HTMLElement) target.scrollIntoView({ block: 'nearest', inline: 'nearest' });
}

/** Which part of the plan is on the bench: all of it, or one stage with handles at its limits. */
function Views({ draft, focus, onFocus }: ViewProps) {
  return (
    <fieldset class="views" onFocusIn={showWhole}>
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

interface BenchProps extends ViewProps {
  /** The last draft whose hours and numbers could be drawn. */
  readonly drawn: ProfileDocument;
  readonly onDraft: (draft: ProfileDocument) => void;
}

/** Another view of the plan begins at its top, not where the last one was left. */
export function Bench({ draft, drawn, focus, onFocus, onDraft }: BenchProps) {
  const top = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const element = top.current;
    if (element !== null && element.getBoundingClientRect().top < 0) element.scrollIntoView();
  }, [focus]);
  return (
    <>
      <div ref={top} />
      <div class="editor-bench">
        <Views draft={draft} focus={focus} onFocus={onFocus} />
        <EditorStrip draft={draft} drawn={drawn} focus={focus} onDraft={onDraft} />
      </div>
    </>
  );
}
