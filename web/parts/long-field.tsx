// A field for text of several lines: label, hint and the fault the service found in it.
import { useId } from 'preact/hooks';
import { describedBy, FieldNotes, useFault } from './field-notes.tsx';

interface LongFieldProps {
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  readonly value: string;
  /** Found on the page already, before the service is asked. */
  readonly fault?: string | undefined;
  readonly onText: (text: string) => void;
}

export function LongField({ name, label, hint, value, fault: own, onText }: LongFieldProps) {
  const id = useId();
  const found = useFault(name);
  const fault = own ?? found;
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <textarea
        {...{ id, name }}
        rows={4}
        spellcheck={false}
        defaultValue={value}
        aria-describedby={describedBy(id, hint, fault)}
        aria-invalid={fault !== undefined}
        onInput={(event) => onText(event.currentTarget.value)}
      />
      <FieldNotes id={id} hint={hint} fault={fault} />
    </div>
  );
}
