// One stage of a draft: when it begins, its vent steps, and the limits of its air, each as a line.
import type { StagePlan } from '../../shared/healing/profile.ts';
import { words } from '../late-strings.ts';
import { NumberField, SelectField, TextField } from './draft-field.tsx';
import { stepsOf, withLimit, withOptional, withSteps } from './edit-draft.ts';
import { LimitLine } from './limit-line.tsx';
import { PlanLine } from './plan-line.tsx';
import { QuantityNote } from './row-heads.tsx';
import { inRow, limitNamesOf, rows } from './stage-rows.ts';

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

/** A stage that a person begins has no hour of its own. */
function Begin({ where, plan, onPlan }: PartProps) {
  const { stage } = plan;
  if (stage === 'loading' || stage === 'closed')
    return (
      <p class="begin" style={inRow(rows.begin)}>
        {words.editor.beginsByPerson[stage]}
      </p>
    );
  return (
    <div class="begin said" style={inRow(rows.begin)}>
      <NumberField
        where={`${where}/afterHours`}
        label={words.editor.hours}
        line={{ after: words.editor.afterClosing }}
        value={plan.afterHours}
        onValue={(afterHours) => onPlan({ ...plan, afterHours })}
      />
      <TextField
        where={`${where}/notBefore`}
        label={words.editor.notBefore}
        line={{ before: words.editor.earliest }}
        isShort={true}
        value={plan.notBefore ?? ''}
        onText={(text) => onPlan(withOptional(plan, 'notBefore', text.trim() === '' ? undefined : text.trim()))}
      />
      <VentSteps {...{ where, plan, onPlan }} />
    </div>
  );
}

function VentSteps({ where, plan, onPlan }: PartProps) {
  const steps = stepsOf(plan);
  if (plan.stage !== 'venting' || steps === null) return null;
  return (
    <NumberField
      where={`${where}/steps`}
      label={words.editor.ventSteps}
      line={{ before: words.editor.openedIn, after: words.editor.openedSteps }}
      value={steps}
      onValue={(next) => onPlan(withSteps(plan, next))}
    />
  );
}

function Quantities({ where, plan, onPlan }: PartProps) {
  return (['humidity', 'temperature'] as const).map((quantity) => (
    <fieldset key={quantity} class="quantity">
      <legend>{words.editor.quantities[quantity]}</legend>
      <p class="quantity-note" style={inRow(rows[quantity].title)}>
        <QuantityNote quantity={quantity} stages={[plan]} />
      </p>
      {limitNamesOf(quantity, [plan]).map((name) => (
        <LimitLine
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

function Vpd({ where, plan, onPlan }: PartProps) {
  const { vpdKpa } = plan;
  const put = (next: StagePlan['vpdKpa']) => onPlan(withOptional(plan, 'vpdKpa', next));
  const said =
    vpdKpa === undefined ? (
      <span class="is-off">{words.editor.shapes.off}</span>
    ) : (
      <NumberField
        where={`${where}/vpdKpa/high`}
        label={words.editor.vpd}
        line={{ before: words.editor.atMost, after: words.units.kpa }}
        value={vpdKpa.high}
        onValue={(high) => put({ ...vpdKpa, high })}
      />
    );
  return (
    <PlanLine
      where={`${where}/vpdKpa`}
      name={words.editor.vpdName}
      gloss={words.editor.gloss.vpd}
      row={rows.vpd}
      said={said}
      inSentence={[`${where}/vpdKpa/high`]}
      source={vpdKpa?.basis}
      more={words.editor.more}
    >
      <SelectField
        where={`${where}/vpdKpa/shape`}
        label={words.editor.shape}
        value={vpdKpa === undefined ? 'off' : 'constant'}
        options={(['off', 'constant'] as const).map((shape) => [shape, words.editor.shapes[shape]])}
        onChoose={(shape) => put(shape === 'off' ? undefined : { high: Number.NaN, basis: words.editor.ours })}
      />
      {vpdKpa !== undefined && (
        <TextField
          where={`${where}/vpdKpa/basis`}
          label={words.editor.basis}
          value={vpdKpa.basis}
          onText={(basis) => put({ ...vpdKpa, basis })}
        />
      )}
    </PlanLine>
  );
}

export function StageFields({ where, at, plan, onPlan, onRemove }: Props) {
  const name = words.editor.stageNames[plan.stage];
  return (
    <fieldset class="stage" style={{ '--at': at + 1 }}>
      <legend style={inRow(rows.name)}>{name}</legend>
      {onRemove !== undefined && (
        <button
          type="button"
          class="quiet leave-out"
          style={inRow(rows.name)}
          aria-label={words.editor.removeStage(name)}
          onClick={onRemove}
        >
          {words.editor.leaveOut}
        </button>
      )}
      <Begin {...{ where, plan, onPlan }} />
      <Quantities {...{ where, plan, onPlan }} />
      <Vpd {...{ where, plan, onPlan }} />
    </fieldset>
  );
}
