// One stage of a draft: when it begins, its vent steps, and the limits of its air.
import type { StagePlan } from '../../shared/healing/profile.ts';
import { words } from '../late-strings.ts';
import { NumberField, OptionalNumberField, TextField } from './draft-field.tsx';
import { type LimitName, type Quantity, stepsOf, withLimit, withOptional, withSteps } from './edit-draft.ts';
import { LimitFields } from './limit-fields.tsx';

interface Props {
  readonly where: string;
  /** The column in which it stands among the stages, from 1 on. */
  readonly at: number;
  readonly plan: StagePlan;
  readonly onPlan: (plan: StagePlan) => void;
  /** Undefined where the stage must stay. */
  readonly onRemove: (() => void) | undefined;
}

type PartProps = Pick<Props, 'where' | 'plan' | 'onPlan'>;

const limitNames: Record<Quantity, readonly LimitName[]> = {
  humidity: ['high', 'low', 'lowLow'],
  temperature: ['highHigh', 'high', 'low', 'lowLow'],
};

/** Rows that the stages share where they stand beside each other, so that the same limit of all of them is on one line. */
const rows = {
  ...{ name: 1, begin: 2, ventSteps: 3, vpd: 14, remove: 15 },
  humidity: { title: 4, high: 5, low: 6, lowLow: 7, highHigh: 8 },
  temperature: { title: 9, highHigh: 10, high: 11, low: 12, lowLow: 13 },
} as const;

const inRow = (row: number) => ({ gridRow: row });

function Begin({ where, plan, onPlan }: PartProps) {
  const { stage } = plan;
  if (stage === 'loading' || stage === 'closed')
    return (
      <p class="details" style={inRow(rows.begin)}>
        {words.editor.beginsByPerson[stage]}
      </p>
    );
  return (
    <div class="limit-fields" style={inRow(rows.begin)}>
      <NumberField
        where={`${where}/afterHours`}
        label={words.editor.hours}
        value={plan.afterHours}
        onValue={(afterHours) => onPlan({ ...plan, afterHours })}
      />
      <TextField
        where={`${where}/notBefore`}
        label={words.editor.notBefore}
        isShort={true}
        value={plan.notBefore ?? ''}
        onText={(text) => onPlan(withOptional(plan, 'notBefore', text.trim() === '' ? undefined : text.trim()))}
      />
    </div>
  );
}

function VentSteps({ where, plan, onPlan }: PartProps) {
  const steps = stepsOf(plan);
  if (plan.stage !== 'venting' || steps === null) return null;
  return (
    <div class="limit-fields" style={inRow(rows.ventSteps)}>
      <NumberField
        where={`${where}/steps`}
        label={words.editor.ventSteps}
        value={steps}
        onValue={(next) => onPlan(withSteps(plan, next))}
      />
    </div>
  );
}

function Quantities({ where, plan, onPlan }: PartProps) {
  return (['humidity', 'temperature'] as const).map((quantity) => (
    <fieldset key={quantity} class="quantity">
      <legend style={inRow(rows[quantity].title)}>{words.editor.quantities[quantity]}</legend>
      {limitNames[quantity]
        // Air cannot be wetter than saturated, so humidity has no outer high of its own; one that a file brought along stays.
        .concat(quantity === 'humidity' && plan.humidity.highHigh !== undefined ? ['highHigh'] : [])
        .map((name) => (
          <LimitFields
            key={name}
            where={`${where}/${quantity}/${name}`}
            row={rows[quantity][name]}
            quantity={quantity}
            name={name}
            limit={plan[quantity][name]}
            model={name === 'highHigh' ? plan[quantity].high : plan[quantity].low}
            onLimit={(limit) => onPlan(withLimit(plan, quantity, name, limit))}
          />
        ))}
    </fieldset>
  ));
}

function Vpd({ where, plan, onPlan }: PartProps) {
  const { vpdKpa } = plan;
  const put = (high: number | undefined) =>
    onPlan(
      withOptional(
        plan,
        'vpdKpa',
        high === undefined ? undefined : { high, basis: vpdKpa?.basis ?? words.editor.ours },
      ),
    );
  return (
    <div class="limit-fields" style={inRow(rows.vpd)}>
      <OptionalNumberField where={`${where}/vpdKpa/high`} label={words.editor.vpd} value={vpdKpa?.high} onValue={put} />
      {vpdKpa !== undefined && (
        <TextField
          where={`${where}/vpdKpa/basis`}
          label={words.editor.basis}
          value={vpdKpa.basis}
          onText={(basis) => onPlan({ ...plan, vpdKpa: { ...vpdKpa, basis } })}
        />
      )}
    </div>
  );
}

export function StageFields({ where, at, plan, onPlan, onRemove }: Props) {
  const name = words.editor.stageNames[plan.stage];
  return (
    <fieldset class="stage" style={{ '--at': at }}>
      <legend style={inRow(rows.name)}>{name}</legend>
      <Begin {...{ where, plan, onPlan }} />
      <VentSteps {...{ where, plan, onPlan }} />
      <Quantities {...{ where, plan, onPlan }} />
      <Vpd {...{ where, plan, onPlan }} />
      {onRemove !== undefined && (
        <button type="button" class="quiet" style={inRow(rows.remove)} onClick={onRemove}>
          {words.editor.removeStage(name)}
        </button>
      )}
    </fieldset>
  );
}
