// The fields of a form: label, hint and the fault the service found in it.
import type { JSX } from 'preact';
import { useId } from 'preact/hooks';
import { describedBy, FieldNotes, useFault } from './field-notes.tsx';

interface FieldProps {
  readonly name: string;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly type?: 'text' | 'password' | 'number' | 'url' | 'search' | 'datetime-local' | 'time' | 'email' | 'tel';
  readonly value?: string | number | undefined;
  readonly required?: boolean;
  readonly min?: number;
  readonly max?: number;
  readonly step?: number | 'any';
  readonly autoComplete?: string;
  readonly autoFocus?: boolean;
  /** Offered while typing; something else may be typed. */
  readonly suggestions?: readonly string[];
  /** Told what stands in the field at each change. */
  readonly onText?: (text: string) => void;
}

/** The attributes of an input's type, one literal each: the types of the attributes belong together. */
function inputType(type: FieldProps['type'], list: string | undefined): JSX.IntrinsicElements['input'] {
  if (list !== undefined) return { type: 'text', list };
  return type === 'number' ? { type: 'number', inputMode: 'decimal' } : ({ type } as JSX.IntrinsicElements['input']);
}

function Suggestions({ id, texts }: { readonly id: string; readonly texts: readonly string[] }) {
  return (
    <datalist id={id}>
      {texts.map((text) => (
        <option key={text} value={text} />
      ))}
    </datalist>
  );
}

export function Field({ name, label, hint, type = 'text', value, suggestions, onText, ...more }: FieldProps) {
  const id = useId();
  const fault = useFault(name);
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input
        {...{ id, name }}
        {...inputType(type, suggestions === undefined ? undefined : `${id}-list`)}
        defaultValue={value === undefined ? '' : String(value)}
        aria-describedby={describedBy(id, hint, fault)}
        aria-invalid={fault !== undefined}
        onInput={(event) => onText?.(event.currentTarget.value)}
        {...more}
      />
      {suggestions !== undefined && <Suggestions id={`${id}-list`} texts={suggestions} />}
      <FieldNotes id={id} hint={hint} fault={fault} />
    </div>
  );
}

interface ChoiceProps {
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  readonly value?: string;
  readonly options: readonly (readonly [value: string, label: string])[];
  readonly required?: boolean;
  /** For screen readers only, where the choice stands in a list that says what it is. */
  readonly isLabelHidden?: boolean;
  readonly onChoose?: (value: string) => void;
}

export function Choice({
  name,
  label,
  hint,
  value,
  options,
  required = false,
  isLabelHidden = false,
  onChoose,
}: ChoiceProps) {
  const id = useId();
  const fault = useFault(name);
  return (
    <div class="field">
      <label for={id} class={isLabelHidden ? 'unseen' : ''}>
        {label}
      </label>
      <select
        {...{ id, name, required }}
        aria-invalid={fault !== undefined}
        aria-describedby={describedBy(id, hint, fault)}
        onChange={(event) => onChoose?.(event.currentTarget.value)}
      >
        {options.map(([option, text]) => (
          <option key={option} value={option} selected={option === value}>
            {text}
          </option>
        ))}
      </select>
      <FieldNotes id={id} hint={hint} fault={fault} />
    </div>
  );
}

interface TickProps {
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  readonly isOn: boolean;
}

export function Tick({ name, label, hint, isOn }: TickProps) {
  const id = useId();
  return (
    <div class="tick">
      <input type="checkbox" {...{ id, name }} defaultChecked={isOn} aria-describedby={hint && `${id}-hint`} />
      <label for={id}>{label}</label>
      {hint !== undefined && <small id={`${id}-hint`}>{hint}</small>}
    </div>
  );
}
