// One limit of a stage as a line: the number of one that stays stands in its sentence, everything else is folded away.
import type { Limit } from '../../shared/healing/profile.ts';
import { words } from '../late-strings.ts';
import { spokenLimit } from '../limit-words.ts';
import { NumberField } from './draft-field.tsx';
import type { LimitName, Quantity } from './edit-draft.ts';
import { kindOf, LimitFields, unitOf } from './limit-fields.tsx';
import { PlanLine } from './plan-line.tsx';
import { rows } from './stage-rows.ts';

interface Props {
  readonly where: string;
  readonly quantity: Quantity;
  readonly name: LimitName;
  /** Undefined: this outer limit is not watched. */
  readonly limit: Limit | undefined;
  /** What a limit that is not there yet begins as. */
  readonly model: Limit;
  readonly onLimit: (limit: Limit | undefined) => void;
}

function Said({ where, quantity, limit, onLimit }: Props) {
  if (limit === undefined) return <span class="is-off">{words.editor.shapes.off}</span>;
  if (limit.shape !== 'constant') return <span class="spoken">{spokenLimit(limit, quantity)}</span>;
  return (
    <NumberField
      where={`${where}/value`}
      label={words.editor.value}
      line={{ before: words.editor.stays, after: unitOf(quantity) }}
      unit={unitOf(quantity)}
      kind={kindOf(quantity)}
      value={limit.value}
      onValue={(value) => onLimit({ ...limit, value })}
    />
  );
}

export function LimitLine(props: Props) {
  const { where, quantity, name, limit } = props;
  return (
    <PlanLine
      where={where}
      name={words.editor.limits[name]}
      gloss={words.editor.gloss[name]}
      row={rows[quantity][name]}
      said={<Said {...props} />}
      inSentence={limit?.shape === 'constant' ? [where, `${where}/value`] : []}
      source={limit?.basis}
      more={words.editor.more}
    >
      <LimitFields {...props} />
    </PlanLine>
  );
}
