// What is folded away of a limit: how it goes, its numbers but the one that stays, the end at house level, and where it comes from.
import type { Limit, LimitEnd } from '../../shared/healing/profile.ts';
import { words } from '../late-strings.ts';
import { temperatureUnit } from '../temperature-unit.ts';
import { NumberField, SelectField, TextField } from './draft-field.tsx';
import { DraftTick } from './draft-tick.tsx';
import { atHouse, fallbackOf, type LimitName, type Quantity, reshaped, withLevelCount } from './edit-draft.ts';

/** A limit that is edited, in one line and in what is folded away of it. */
export interface LimitProps {
  readonly where: string;
  readonly quantity: Quantity;
  readonly name: LimitName;
  /** Undefined: this outer limit is not watched. */
  readonly limit: Limit | undefined;
  /** What a limit that is not there yet begins as. */
  readonly model: Limit;
  readonly onLimit: (limit: Limit | undefined) => void;
}

type ShapeChoice = Limit['shape'] | 'off';

/** As the site has it. */
export function unitOf(quantity: Quantity): string {
  return quantity === 'temperature' ? temperatureUnit.value : words.units.humidity;
}

export function kindOf(quantity: Quantity): 'temperature' | 'plain' {
  return quantity === 'temperature' ? 'temperature' : 'plain';
}

interface EndProps {
  readonly where: string;
  readonly label: string;
  readonly quantity: Quantity;
  readonly end: LimitEnd;
  /** False for one of many, which do not each explain themselves. */
  readonly isSole: boolean;
  readonly onEnd: (end: LimitEnd) => void;
}

function EndFields({ where, label, quantity, end, isSole, onEnd }: EndProps) {
  const isHouse = typeof end !== 'number';
  return (
    <div class="end-fields">
      <NumberField
        where={isHouse ? `${where}/fallback` : where}
        label={isHouse ? `${label}: ${words.editor.fallback.toLowerCase()}` : label}
        unit={unitOf(quantity)}
        kind={kindOf(quantity)}
        value={fallbackOf(end)}
        onValue={(value) => onEnd(isHouse ? { ...end, fallback: value } : value)}
      />
      <DraftTick
        label={words.editor.house}
        hint={isHouse || isSole ? words.editor.gloss.house : undefined}
        isOn={isHouse}
        onTick={(isOn) => onEnd(atHouse(end, isOn))}
      />
      {isHouse && (
        <NumberField
          where={`${where}/houseOffset`}
          label={words.editor.houseOffset}
          unit={unitOf(quantity)}
          kind={quantity === 'temperature' ? 'difference' : 'plain'}
          value={end.houseOffset}
          onValue={(houseOffset) => onEnd({ ...end, houseOffset })}
        />
      )}
    </div>
  );
}

interface ValueProps {
  readonly where: string;
  readonly quantity: Quantity;
  readonly limit: Limit;
  readonly onLimit: (limit: Limit) => void;
}

function Values({ where, quantity, limit, onLimit }: ValueProps) {
  const number = { unit: unitOf(quantity), kind: kindOf(quantity) };
  if (limit.shape === 'constant') return null;
  if (limit.shape === 'levels') return <Levels {...{ where, quantity, limit, onLimit }} />;
  return (
    <>
      <NumberField
        where={`${where}/from`}
        label={words.editor.from}
        {...number}
        value={limit.from}
        onValue={(from) => onLimit({ ...limit, from })}
      />
      {limit.shape === 'stairs' && (
        <NumberField
          where={`${where}/steps`}
          label={words.editor.steps}
          value={limit.steps}
          onValue={(steps) => onLimit({ ...limit, steps })}
        />
      )}
      <EndFields
        where={`${where}/to`}
        label={words.editor.to}
        quantity={quantity}
        end={limit.to}
        isSole={true}
        onEnd={(to) => onLimit({ ...limit, to })}
      />
    </>
  );
}

function Levels({
  where,
  quantity,
  limit,
  onLimit,
}: ValueProps & { readonly limit: Extract<Limit, { shape: 'levels' }> }) {
  const put = (index: number, end: LimitEnd) =>
    onLimit({ ...limit, values: limit.values.map((one, at) => (at === index ? end : one)) });
  return (
    <>
      <SelectField
        where={`${where}/values`}
        label={words.editor.levelCount}
        value={String(limit.values.length)}
        options={Array.from({ length: 48 }, (_, index) => [String(index + 1), String(index + 1)] as const)}
        onChoose={(count) => onLimit(withLevelCount(limit, Number(count)))}
      />
      {limit.values.map((end, index) => (
        <EndFields
          key={index}
          where={`${where}/values/${index}`}
          label={words.editor.levelNumber(index + 1)}
          quantity={quantity}
          end={end}
          isSole={false}
          onEnd={(next) => put(index, next)}
        />
      ))}
    </>
  );
}

export function LimitFields({ where, quantity, name, limit, model, onLimit }: LimitProps) {
  const isOuter = name === 'lowLow' || name === 'highHigh';
  const shapes: readonly ShapeChoice[] = [
    ...(isOuter ? (['off'] as const) : []),
    'constant',
    'ramp',
    'stairs',
    'levels',
  ];
  const choose = (shape: string) => {
    if (shape === 'off') onLimit(undefined);
    else onLimit(reshaped(limit ?? model, shape as Limit['shape']));
  };
  return (
    <>
      <SelectField
        where={`${where}/shape`}
        label={words.editor.shape}
        value={limit?.shape ?? 'off'}
        options={shapes.map((shape) => [shape, words.editor.shapes[shape]])}
        onChoose={choose}
      />
      {limit !== undefined && (
        <>
          <Values where={where} quantity={quantity} limit={limit} onLimit={onLimit} />
          <TextField
            where={`${where}/basis`}
            label={words.editor.basis}
            value={limit.basis}
            onText={(basis) => onLimit({ ...limit, basis })}
          />
        </>
      )}
    </>
  );
}
