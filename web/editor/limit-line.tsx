// One limit of a stage as a line: the number of one that stays stands in its sentence, everything else is folded away.
import { words } from '../late-strings.ts';
import { spokenLimit } from '../limit-words.ts';
import { NumberField } from './draft-field.tsx';
import { kindOf, LimitFields, type LimitProps, unitOf } from './limit-fields.tsx';
import { PlanLine } from './plan-line.tsx';
import { rows } from './stage-rows.ts';

function Said({ where, quantity, limit, onLimit }: LimitProps) {
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

export function LimitLine(props: LimitProps) {
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
