// Fields of a draft: each knows its place in the document, and shows the fault that was found exactly there at once.
import { createContext } from 'preact';
import { useContext, useEffect, useState } from 'preact/hooks';
import type { FieldFault } from '../api.ts';
import { celsiusOf, differenceInUnit, inUnit, type TemperatureUnit, temperatureUnit } from '../temperature-unit.ts';

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

/** True when anything at or under a place is at fault. */
export function useFaultBelow(where: string): boolean {
  return useContext(DraftFaults).some((fault) => fault.where === where || fault.where.startsWith(`${where}/`));
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

/** What a number stands for: a temperature and the size of a step of it are shown in the site's unit. */
export type NumberKind = 'plain' | 'temperature' | 'difference';

const toShown: Record<NumberKind, (value: number, unit: TemperatureUnit) => number> = {
  plain: (value) => value,
  temperature: inUnit,
  difference: differenceInUnit,
};
const fromShown: Record<NumberKind, (value: number, unit: TemperatureUnit) => number> = {
  plain: (value) => value,
  temperature: celsiusOf,
  difference: (value, unit) => celsiusOf(value, unit) - celsiusOf(0, unit),
};

const digits = 1000;
const rounded = (value: number) => Math.round(value * digits) / digits;

function textOfNumber(value: number, kind: NumberKind, unit: TemperatureUnit): string {
  return Number.isFinite(value) ? String(rounded(toShown[kind](value, unit))) : '';
}

/** NaN for an empty or unreadable text. A comma is read as a point. */
function numberOfText(text: string, kind: NumberKind, unit: TemperatureUnit): number {
  const plain = text.trim().replace(',', '.');
  return plain === '' ? Number.NaN : rounded(fromShown[kind](Number(plain), unit));
}

interface PlaceProps {
  readonly where: string;
  readonly label: string;
}

interface NumberProps extends PlaceProps {
  readonly value: number;
  readonly kind?: NumberKind;
  readonly unit?: string;
  /** NaN while the field holds no number. */
  readonly onValue: (value: number) => void;
}

/** Keeps what is typed, also what is no number; follows the strip when its number is dragged there. */
export function NumberField({ where, label, value, kind = 'plain', unit = '', onValue }: NumberProps) {
  const shownIn = temperatureUnit.value;
  const [text, setText] = useState(() => textOfNumber(value, kind, shownIn));
  useEffect(() => {
    const typed = numberOfText(text, kind, shownIn);
    if (!Object.is(typed, value) && !(Number.isNaN(typed) && Number.isNaN(value)))
      setText(textOfNumber(value, kind, shownIn));
  }, [value, kind, shownIn]);
  return (
    <Labelled where={where} label={unit === '' ? label : `${label} (${unit})`} kind="is-number">
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

export function TextField({ where, label, value, isShort = false, isLong = false, onText }: TextProps) {
  const take = (event: { readonly currentTarget: { readonly value: string } }) => onText(event.currentTarget.value);
  return (
    <Labelled where={where} label={label} kind={isShort ? 'is-number' : 'is-text'}>
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
  readonly kind: 'is-number' | 'is-text' | 'is-choice';
  readonly children: (more: {
    readonly id: string;
    readonly 'aria-invalid': boolean;
    readonly 'aria-describedby': string | undefined;
  }) => preact.ComponentChildren;
}

function Labelled({ where, label, kind, children }: LabelledProps) {
  const reason = useFaultAt(where);
  const id = fieldId(where);
  const isFaulty = reason !== undefined;
  return (
    <div class={`field ${kind}`}>
      <label for={id}>{label}</label>
      {children({ id, 'aria-invalid': isFaulty, 'aria-describedby': isFaulty ? `${id}-fault` : undefined })}
      {isFaulty && (
        <small class="fault" id={`${id}-fault`}>
          {reason}
        </small>
      )}
    </div>
  );
}
