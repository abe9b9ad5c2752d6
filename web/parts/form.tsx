// Forms: the fields keep what was typed when the service says no, and each fault stands at its field.
import type { ComponentChildren } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { ApiProblem } from '../api.ts';
import { words } from '../strings.ts';
import { Faults, fieldName } from './field-notes.tsx';

interface FormProps {
  /** Sends the form; a refusal is shown and everything typed is kept. */
  readonly onSend: (fields: FormData) => Promise<unknown>;
  readonly act: string;
  readonly onCancel?: () => void;
  /** Empties the fields after it worked. */
  readonly clears?: boolean;
  readonly label?: string;
  readonly children: ComponentChildren;
}

/** A text field's content, trimmed; '' when there is no such field. */
export function textOf(fields: FormData, name: string): string {
  const value = fields.get(name);
  return typeof value === 'string' ? value.trim() : '';
}

/** A number field's content; 0 when it is empty. */
export function numberOf(fields: FormData, name: string): number {
  return Number(textOf(fields, name).replace(',', '.')) || 0;
}

function fieldWithFault(form: HTMLFormElement | null, where: string): HTMLElement | null {
  const field = form?.elements.namedItem(fieldName(where));
  return field instanceof HTMLElement ? field : null;
}

function focusFirstFault(form: HTMLFormElement | null, { faults }: ApiProblem): void {
  faults
    .map(({ where }) => fieldWithFault(form, where))
    .find((field) => field !== null)
    ?.focus();
}

/** True when each fault stands at a field, so that it need not be said twice. */
function hasOnlyFieldFaults(form: HTMLFormElement | null, { faults }: ApiProblem): boolean {
  return faults.length > 0 && faults.every(({ where }) => fieldWithFault(form, where) !== null);
}

export function Form({ onSend, act, onCancel, clears = false, label, children }: FormProps) {
  const [problem, setProblem] = useState<ApiProblem>();
  const [isBusy, setBusy] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const send = async () => {
    if (form.current === null || isBusy) return;
    setBusy(true);
    setProblem(undefined);
    try {
      await onSend(new FormData(form.current));
      if (clears) form.current?.reset();
    } catch (caught) {
      if (!(caught instanceof ApiProblem)) throw caught;
      setProblem(caught);
      focusFirstFault(form.current, caught);
    } finally {
      setBusy(false);
    }
  };
  return (
    <form
      ref={form}
      aria-label={label}
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <Faults.Provider value={problem?.faults ?? []}>{children}</Faults.Provider>
      {problem !== undefined && (
        <p class="form-problem" role="alert">
          {hasOnlyFieldFaults(form.current, problem) ? words.problems.seeFields : problem.message}
        </p>
      )}
      <div class="form-acts">
        <button type="submit" class="main" aria-busy={isBusy}>
          {act}
        </button>
        {onCancel !== undefined && (
          <button type="button" class="plain" onClick={onCancel}>
            {words.acts.cancel}
          </button>
        )}
      </div>
    </form>
  );
}
