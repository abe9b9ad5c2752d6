// The fields of a form: label, hint and the fault the service found in it.
import { createContext, type JSX } from 'preact';
import { useContext, useId } from 'preact/hooks';
import type { FieldFault } from '../api.ts';

/** The faults of the form that the fields stand in. */
export const Faults = createContext<readonly FieldFault[]>([]);

/** The name of the field that a fault's place means: the last part of a JSON Pointer or a dotted name. */
export function fieldName(where: string): string {
  return where.split(/[/.]/).at(-1) ?? '';
}

/** The fault of a field, by its name or a JSON Pointer to it. */
function faultOf(faults: readonly FieldFault[], name: string): string | undefined {
  return faults.find(({ where }) => fieldName(where) === name)?.reason;
}

interface FieldProps {
  readonly name: string;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly type?: 'text' | 'password' | 'number' | 'url' | 'search' | 'datetime-local';
  readonly value?: string | number | undefined;
  readonly required?: boolean;
  readonly min?: number;
  readonly max?: number;
  readonly step?: number | 'any';
  readonly autoComplete?: string;
  readonly autoFocus?: boolean;
}

/** The attributes of an input's type, one literal each: the types of the attributes belong together. */
function inputType(type: FieldProps['type']): JSX.IntrinsicElements['input'] {
  return type === 'number' ? { type: 'number', inputMode: 'decimal' } : ({ type } as JSX.IntrinsicElements['input']);
}

export function Field({ name, label, hint, type = 'text', value, required = false, ...more }: FieldProps) {
  const id = useId();
  const fault = faultOf(useContext(Faults), name);
  const described = [hint && `${id}-hint`, fault && `${id}-fault`].filter(Boolean).join(' ');
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input
        {...{ id, name, required }}
        {...inputType(type)}
        defaultValue={value === undefined ? '' : String(value)}
        aria-describedby={described === '' ? undefined : described}
        aria-invalid={fault !== undefined}
        {...more}
      />
      {hint !== undefined && <small id={`${id}-hint`}>{hint}</small>}
      {fault !== undefined && (
        <small class="fault" id={`${id}-fault`}>
          {fault}
        </small>
      )}
    </div>
  );
}

interface ChoiceProps {
  readonly name: string;
  readonly label: string;
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
  value,
  options,
  required = false,
  isLabelHidden = false,
  onChoose,
}: ChoiceProps) {
  const id = useId();
  const fault = faultOf(useContext(Faults), name);
  return (
    <div class="field">
      <label for={id} class={isLabelHidden ? 'unseen' : ''}>
        {label}
      </label>
      <select
        {...{ id, name, required }}
        aria-invalid={fault !== undefined}
        aria-describedby={fault === undefined ? undefined : `${id}-fault`}
        onChange={(event) => onChoose?.(event.currentTarget.value)}
      >
        {options.map(([option, text]) => (
          <option key={option} value={option} selected={option === value}>
            {text}
          </option>
        ))}
      </select>
      {fault !== undefined && (
        <small class="fault" id={`${id}-fault`}>
          {fault}
        </small>
      )}
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
