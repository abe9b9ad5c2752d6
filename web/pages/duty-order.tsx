// Whom an alarm goes to when nobody on duty takes it, and after how long.
import type { DutyView } from '../../shared/api/duty.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { dutyOf } from '../duty-words.ts';
import { words } from '../late-strings.ts';
import { ActButton } from '../parts/act-button.tsx';
import { Field } from '../parts/fields.tsx';
import { Form, numberOf } from '../parts/form.tsx';

const { duty: say } = words;

interface Props {
  readonly duty: DutyView;
  readonly onChanged: () => void;
}

/** People in the order in which they are asked; each but the first can go one place up. */
function Order({ duty, onChanged }: Props) {
  const ids = duty.people.map(({ id }) => id);
  const raise = (index: number) => {
    const order = ids.toSpliced(index, 1).toSpliced(index - 1, 0, ids[index] ?? '');
    return calls.saveDuty({ ...dutyOf(duty), order });
  };
  return (
    <ol class="plain-list is-acted">
      {duty.people.map(({ id, name, via }, index) => (
        <li key={id}>
          <span>
            {index + 1}. {name} {via.length === 0 && <small>({say.unreached})</small>}
          </span>
          {index > 0 && (
            <ActButton
              kind="quiet"
              work={() => raise(index)}
              done={say.moved(name, index)}
              onDone={onChanged}
              label={say.earlierFor(name)}
            >
              {say.earlier}
            </ActButton>
          )}
        </li>
      ))}
    </ol>
  );
}

function Waiting({ duty, onChanged }: Props) {
  const send = async (fields: FormData) => {
    await calls.saveDuty({
      ...dutyOf(duty),
      nextAfterMinutes: numberOf(fields, 'nextAfterMinutes'),
      everyoneAfterMinutes: numberOf(fields, 'everyoneAfterMinutes'),
      sirenAfterMinutes: numberOf(fields, 'sirenAfterMinutes'),
      repeatMinutes: numberOf(fields, 'repeatMinutes'),
    });
    showNote(say.waitingSaved);
    onChanged();
  };
  const minutes = { type: 'number', min: 1, max: 1440, step: 1, required: true } as const;
  return (
    <Form onSend={send} act={say.saveWaiting} label={say.waiting}>
      <div class="field-pair">
        <Field name="nextAfterMinutes" label={say.nextAfter} value={duty.nextAfterMinutes} {...minutes} />
        <Field name="everyoneAfterMinutes" label={say.everyoneAfter} value={duty.everyoneAfterMinutes} {...minutes} />
        <Field name="sirenAfterMinutes" label={say.sirenAfter} value={duty.sirenAfterMinutes} {...minutes} />
        <Field name="repeatMinutes" label={say.repeatEvery} value={duty.repeatMinutes} {...minutes} />
      </div>
    </Form>
  );
}

export function DutyOrder(props: Props) {
  return (
    <>
      <section aria-labelledby="order">
        <h3 id="order">{say.order}</h3>
        <p class="details">{say.orderHint}</p>
        <Order {...props} />
      </section>
      <section aria-labelledby="waiting">
        <h3 id="waiting">{say.waiting}</h3>
        <Waiting {...props} />
      </section>
    </>
  );
}
