// One stage of a draft: when it begins, its vent steps, and the limits of its air.
import type { StagePlan } from '../../shared/healing/profile.ts';
import { words } from '../late-strings.ts';
import { NumberField, OptionalNumberField, TextField } from './draft-field.tsx';
import { type LimitName, type Quantity, stepsOf, withLimit, withOptional, withSteps } from './edit-draft.ts';
import { LimitFields } from './limit-fields.tsx';

interface Props {
  readonly where: string;
  readonly plan: StagePlan;
  readonly onPlan: (plan: StagePlan) => void;
  /** Undefined where the stage must stay. */
  readonly onRemove: (() => void) | undefined;
}

const limitNames: Record<Quantity, readonly LimitName[]> = {
  humidity: ['high', 'low', 'lowLow'],
  temperature: ['highHigh', 'high', 'low', 'lowLow'],
};

function Begin({ where, plan, onPlan }: Omit<Props, 'onRemove'>) {
  const { stage } = plan;
  if (stage === 'loading' || stage === 'closed') return <p class="details">{words.editor.beginsByPerson[stage]}</p>;
  return (
    <div class="limit-fields">
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

function VentSteps({ where, plan, onPlan }: Omit<Props, 'onRemove'>) {
  const steps = stepsOf(plan);
  if (plan.stage !== 'venting' || steps === null) return null;
  return (
    <NumberField
      where={`${where}/steps`}
      label={words.editor.ventSteps}
      value={steps}
      onValue={(next) => onPlan(withSteps(plan, next))}
    />
  );
}

function Quantities({ where, plan, onPlan }: Omit<Props, 'onRemove'>) {
  return (['humidity', 'temperature'] as const).map((quantity) => (
    <fieldset key={quantity} class="quantity">
      <legend>{words.editor.quantities[quantity]}</legend>
      {limitNames[quantity]
        // Air cannot be wetter than saturated, so humidity has no outer high of its own; one that a file brought along stays.
        .concat(quantity === 'humidity' && plan.humidity.highHigh !== undefined ? ['highHigh'] : [])
        .map((name) => (
          <LimitFields
            key={name}
            where={`${where}/${quantity}/${name}`}
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

function Vpd({ where, plan, onPlan }: Omit<Props, 'onRemove'>) {
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
    <div class="limit-fields">
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

export function StageFields({ where, plan, onPlan, onRemove }: Props) {
  const name = words.editor.stageNames[plan.stage];
  return (
    <fieldset class="stage">
      <legend>{name}</legend>
      <Begin {...{ where, plan, onPlan }} />
      <VentSteps {...{ where, plan, onPlan }} />
      <Quantities {...{ where, plan, onPlan }} />
      <Vpd {...{ where, plan, onPlan }} />
      {onRemove !== undefined && (
        <button type="button" class="quiet" onClick={onRemove}>
          {words.editor.removeStage(name)}
        </button>
      )}
    </fieldset>
  );
}
