// The numbers of one limit: its shape, its values, the end at house level, and where it comes from.
import type { Limit, LimitEnd } from '../../shared/healing/profile.ts';
import { words } from '../late-strings.ts';
import { temperatureUnit } from '../temperature-unit.ts';
import { FaultAt, NumberField, SelectField, TextField } from './draft-field.tsx';
import { DraftTick } from './draft-tick.tsx';
import { atHouse, fallbackOf, type LimitName, type Quantity, reshaped, withLevelCount } from './edit-draft.ts';

interface Props {
  readonly where: string;
  /** The row that it shares with the same limit of the other stages. */
  readonly row: number;
  readonly quantity: Quantity;
  readonly name: LimitName;
  /** Undefined: this outer limit is not watched. */
  readonly limit: Limit | undefined;
  /** What a limit that is not there yet begins as. */
  readonly model: Limit;
  readonly onLimit: (limit: Limit | undefined) => void;
}

type ShapeChoice = Limit['shape'] | 'off';

function unitOf(quantity: Quantity): string {
  return quantity === 'temperature' ? temperatureUnit.value : words.units.humidity;
}

function kindOf(quantity: Quantity): 'temperature' | 'plain' {
  return quantity === 'temperature' ? 'temperature' : 'plain';
}

interface EndProps {
  readonly where: string;
  readonly label: string;
  readonly quantity: Quantity;
  readonly end: LimitEnd;
  readonly onEnd: (end: LimitEnd) => void;
}

function EndFields({ where, label, quantity, end, onEnd }: EndProps) {
  const isHouse = typeof end !== 'number';
  return (
    <>
      <NumberField
        where={isHouse ? `${where}/fallback` : where}
        label={isHouse ? `${label}: ${words.editor.fallback.toLowerCase()}` : label}
        unit={unitOf(quantity)}
        kind={kindOf(quantity)}
        value={fallbackOf(end)}
        onValue={(value) => onEnd(isHouse ? { ...end, fallback: value } : value)}
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
      <DraftTick label={words.editor.house} isOn={isHouse} onTick={(isOn) => onEnd(atHouse(end, isOn))} />
    </>
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
  if (limit.shape === 'constant')
    return (
      <NumberField
        where={`${where}/value`}
        label={words.editor.value}
        {...number}
        value={limit.value}
        onValue={(value) => onLimit({ ...limit, value })}
      />
    );
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
      <EndFields
        where={`${where}/to`}
        label={words.editor.to}
        quantity={quantity}
        end={limit.to}
        onEnd={(to) => onLimit({ ...limit, to })}
      />
      {limit.shape === 'stairs' && (
        <NumberField
          where={`${where}/steps`}
          label={words.editor.steps}
          value={limit.steps}
          onValue={(steps) => onLimit({ ...limit, steps })}
        />
      )}
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
          onEnd={(next) => put(index, next)}
        />
      ))}
    </>
  );
}

export function LimitFields({ where, row, quantity, name, limit, model, onLimit }: Props) {
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
    <fieldset class="limit" style={{ gridRow: row }}>
      <legend>{words.editor.limits[name]}</legend>
      <FaultAt where={where} />
      <div class="limit-fields">
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
      </div>
    </fieldset>
  );
}
