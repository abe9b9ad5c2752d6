// What the rows of the plan mean: beside the stages where they are columns, else folded away over them.
import type { StagePlan } from '../../shared/healing/profile.ts';
import { words } from '../late-strings.ts';
import { temperatureUnit } from '../temperature-unit.ts';
import type { Quantity } from './edit-draft.ts';
import { inRow, isCountedFromHouse, limitNamesOf, rows } from './stage-rows.ts';

interface QuantityProps {
  readonly quantity: Quantity;
  readonly stages: readonly StagePlan[];
}

/** The unit of a quantity, and what its limits are counted from. */
export function QuantityNote({ quantity, stages }: QuantityProps) {
  const { house, gloss } = words.editor;
  return (
    <>
      {quantity === 'temperature' ? temperatureUnit.value : words.units.humidity}
      {isCountedFromHouse(quantity, stages) && (
        <small class="gloss">
          {house}: {gloss.house}
        </small>
      )}
    </>
  );
}

function HeadsOf({ quantity, stages }: QuantityProps) {
  const { limits, gloss, quantities } = words.editor;
  return (
    <>
      <p class="row-title" style={inRow(rows[quantity].title)}>
        {quantities[quantity]} <QuantityNote quantity={quantity} stages={stages} />
      </p>
      {limitNamesOf(quantity, stages).map((name) => (
        <p key={name} style={inRow(rows[quantity][name])}>
          {limits[name]} <small class="gloss">{gloss[name]}</small>
        </p>
      ))}
    </>
  );
}

/** Only for the eye: each field has the names of its stage and its limit by itself. */
export function RowHeads({ stages }: Pick<QuantityProps, 'stages'>) {
  return (
    <div class="row-heads" aria-hidden="true">
      <p class="row-name" style={inRow(rows.name)} />
      <p class="row-begin" style={inRow(rows.begin)}>
        {words.editor.begin}
      </p>
      <HeadsOf quantity="humidity" stages={stages} />
      <HeadsOf quantity="temperature" stages={stages} />
      <p style={inRow(rows.vpd)}>
        {words.editor.vpdName} <small class="gloss">{words.editor.gloss.vpd}</small>
      </p>
    </div>
  );
}

/** The terms of the plan in plain words. */
export function Glossary() {
  const { limits, gloss } = words.editor;
  const terms = [
    [limits.high, gloss.high],
    [limits.low, gloss.low],
    [limits.highHigh, gloss.highHigh],
    [limits.lowLow, gloss.lowLow],
    [words.editor.house, gloss.house],
    [words.editor.vpdName, gloss.vpd],
  ] as const;
  return (
    <details class="glossary">
      <summary>{words.editor.glossary}</summary>
      <dl>
        {terms.map(([term, meaning]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{meaning}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
