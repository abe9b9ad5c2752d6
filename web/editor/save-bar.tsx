// The foot of the editor, in sight wherever its page is: whether the plan can be used, and the ways out of it.
import type { ComponentChildren } from 'preact';
import { words } from '../late-strings.ts';

interface Props {
  /** What the button that saves says. */
  readonly act: string;
  readonly isBusy: boolean;
  /** False while something stands in the way. */
  readonly canSave: boolean;
  /** Why the service refused. */
  readonly problem: string | undefined;
  readonly onSave: () => void;
  readonly onCancel: () => void;
  readonly children: ComponentChildren;
}

export function SaveBar({ act, isBusy, canSave, problem, onSave, onCancel, children }: Props) {
  return (
    <div class="save-bar">
      {children}
      {problem !== undefined && (
        <p class="form-problem" role="alert">
          {problem}
        </p>
      )}
      <div class="form-acts">
        <button type="button" class="main" aria-busy={isBusy} aria-disabled={!canSave} onClick={onSave}>
          {act}
        </button>
        <button type="button" class="plain" onClick={onCancel}>
          {words.acts.cancel}
        </button>
      </div>
    </div>
  );
}
