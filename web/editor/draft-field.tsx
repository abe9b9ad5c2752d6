// Fields of a draft: each knows its place in the document, and shows the fault that was found exactly there at once.
import { createContext } from 'preact';
import { useContext, useEffect, useState } from 'preact/hooks';
import type { FieldFault } from '../api.ts';
import { temperatureUnit } from '../temperature-unit.ts';
import { type NumberKind, numberOfText, textOfNumber } from './number-text.ts';

/** Every fault of the draft, in words. */
export const DraftFaults = createContext<readonly FieldFault[]>([]);

/** The id of the field at a place of the document. */
export function fieldId(where: string): string {
  return `at${where.replaceAll('/', '-')}`;
}

/** The fault exactly at a place. */
export function useFaultAt(where: string): string | undefined {
  return useContext(DraftFaults).find((fault) => fault.where === where)?.reason;
}

/** True when anything at or under a place is at fault, but for the places that are left out. */
export function useFaultBelow(where: string, leftOut: readonly string[] = []): boolean {
  return useContext(DraftFaults).some(
    (fault) => (fault.where === where || fault.where.startsWith(`${where}/`)) && !leftOut.includes(fault.where),
  );
}

/** The fault of something that is more than one field, where it stands. */
export function FaultAt({ where }: { readonly where: string }) {
  const reason = useFaultAt(where);
  if (reason === undefined) return null;
  return (
    <p class="fault" id={fieldId(where)} tabIndex={-1}>
      {reason}
    </p>
  );
}

/** The words round a field that stands in a sentence. */
interface Line {
  readonly before?: string;
  readonly after?: string;
}

interface PlaceProps {
  readonly where: string;
  /** Seen over the field, unless it stands in a line. */
  readonly label: string;
  readonly line?: Line;
}

interface NumberProps extends PlaceProps {
  readonly value: number;
  readonly kind?: NumberKind;
  readonly unit?: string;
  /** NaN while the field holds no number. */
  readonly onValue: (value: number) => void;
}

/** Keeps what is typed, also what is no number; follows the strip when its number is dragged there. */
export function NumberField({ value, kind = 'plain', unit = '', onValue, label, ...place }: NumberProps) {
  const shownIn = temperatureUnit.value;
  const [text, setText] = useState(() => textOfNumber(value, kind, shownIn));
  useEffect(() => {
    const typed = numberOfText(text, kind, shownIn);
    if (!Object.is(typed, value) && !(Number.isNaN(typed) && Number.isNaN(value)))
      setText(textOfNumber(value, kind, shownIn));
  }, [value, kind, shownIn]);
  return (
    <Labelled {...place} label={unit === '' ? label : `${label} (${unit})`} kind="is-number">
      {(more) => (
        <input
          {...more}
          inputMode="decimal"
          autoComplete="off"
          value={text}
          onInput={(event) => {
            setText(event.currentTarget.value);
            onValue(numberOfText(event.currentTarget.value, kind, shownIn));
          }}
        />
      )}
    </Labelled>
  );
}

interface OptionalProps extends PlaceProps {
  readonly value: number | undefined;
  readonly unit?: string;
  readonly onValue: (value: number | undefined) => void;
}

/** A number that may be left out. */
export function OptionalNumberField({ value, onValue, ...more }: OptionalProps) {
  return <NumberField {...more} value={value ?? Number.NaN} onValue={(next) => onValue(optional(next))} />;
}

function optional(value: number): number | undefined {
  return Number.isNaN(value) ? undefined : value;
}

interface TextProps extends PlaceProps {
  readonly value: string;
  /** A time of day rather than a sentence. */
  readonly isShort?: boolean;
  readonly isLong?: boolean;
  readonly onText: (text: string) => void;
}

export function TextField({ value, isShort = false, isLong = false, onText, ...place }: TextProps) {
  const take = (event: { readonly currentTarget: { readonly value: string } }) => onText(event.currentTarget.value);
  return (
    <Labelled {...place} kind={isShort ? 'is-time' : 'is-text'}>
      {(more) =>
        isLong ? (
          <textarea {...more} rows={3} value={value} onInput={take} />
        ) : (
          <input {...more} type="text" autoComplete="off" value={value} onInput={take} />
        )
      }
    </Labelled>
  );
}

interface SelectProps extends PlaceProps {
  readonly value: string;
  readonly options: readonly (readonly [value: string, label: string])[];
  readonly onChoose: (value: string) => void;
}

export function SelectField({ where, label, value, options, onChoose }: SelectProps) {
  return (
    <Labelled where={where} label={label} kind="is-choice">
      {(more) => (
        <select {...more} onChange={(event) => onChoose(event.currentTarget.value)}>
          {options.map(([option, text]) => (
            <option key={option} value={option} selected={option === value}>
              {text}
            </option>
          ))}
        </select>
      )}
    </Labelled>
  );
}

interface LabelledProps extends PlaceProps {
  readonly kind: 'is-number' | 'is-time' | 'is-text' | 'is-choice';
  readonly children: (more: {
    readonly id: string;
    readonly 'aria-invalid': boolean;
    readonly 'aria-describedby': string | undefined;
  }) => preact.ComponentChildren;
}

function Labelled({ where, label, line, kind, children }: LabelledProps) {
  const reason = useFaultAt(where);
  const id = fieldId(where);
  const isFaulty = reason !== undefined;
  return (
    <div class={line === undefined ? `field ${kind}` : `inline ${kind}`}>
      <label for={id} class={line === undefined ? undefined : 'unseen'}>
        {label}
      </label>
      {line?.before}{' '}
      <span class={line === undefined ? undefined : 'unbroken'}>
        {children({ id, 'aria-invalid': isFaulty, 'aria-describedby': isFaulty ? `${id}-fault` : undefined })}{' '}
        {line?.after}
      </span>
      {isFaulty && (
        <small class="fault" id={`${id}-fault`}>
          {reason}
        </small>
      )}
    </div>
  );
}
