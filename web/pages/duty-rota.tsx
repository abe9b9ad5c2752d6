// The times of duty, line by line, and a form for one more. Each change is stored at once.
import { useState } from 'preact/hooks';
import type { DutyView } from '../../shared/api/duty.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { type DutyLine, dutyLines, dutyOf } from '../duty-words.ts';
import { words } from '../late-strings.ts';
import { ActButton } from '../parts/act-button.tsx';
import { Disclosure } from '../parts/disclosure.tsx';
import { Choice, Field } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';

const { duty: say } = words;

interface RotaProps {
  readonly duty: DutyView;
  readonly onChanged: () => void;
}

function DayTicks() {
  return (
    <fieldset class="day-ticks">
      <legend>{say.onDays}</legend>
      {say.days.map((name, index) => (
        <label key={name}>
          <input type="checkbox" name="weekday" value={index + 1} aria-label={name} />
          {say.daysShort[index]}
        </label>
      ))}
    </fieldset>
  );
}

function AddSpan({ duty, onChanged, close }: RotaProps & { readonly close: () => void }) {
  const [isDayless, setDayless] = useState(false);
  const send = async (fields: FormData) => {
    const weekdays = fields.getAll('weekday').map(Number);
    setDayless(weekdays.length === 0);
    if (weekdays.length === 0) return;
    const [personId, from, to] = [textOf(fields, 'person'), textOf(fields, 'from'), textOf(fields, 'to')];
    const added = weekdays.map((weekday) => ({ personId, weekday, from, to }));
    await calls.saveDuty({ ...dutyOf(duty), spans: [...duty.spans, ...added] });
    showNote(say.spanAdded(dutyLines({ spans: added, people: duty.people })[0]?.text ?? ''));
    close();
    onChanged();
  };
  return (
    <Form onSend={send} act={say.addSpan} onCancel={close} label={say.addSpan}>
      <Choice name="person" label={say.who} options={duty.people.map(({ id, name }) => [id, name])} />
      <DayTicks />
      {isDayless && (
        <p class="fault" role="alert">
          {say.chooseDay}
        </p>
      )}
      <div class="field-pair">
        <Field name="from" label={say.from} type="time" value="06:00" required />
        <Field name="to" label={say.to} type="time" value="14:00" required />
      </div>
      <p class="details">{say.toHint}</p>
    </Form>
  );
}

function Line({ line, duty, onChanged }: RotaProps & { readonly line: DutyLine }) {
  const remove = () =>
    calls.saveDuty({ ...dutyOf(duty), spans: duty.spans.filter((span) => !line.spans.includes(span)) });
  return (
    <li>
      <span>{line.text}</span>
      <ActButton
        kind="quiet"
        work={remove}
        done={say.spanRemoved(line.text)}
        onDone={onChanged}
        label={say.removeSpanFor(line.text)}
      >
        {say.removeSpan}
      </ActButton>
    </li>
  );
}

/** For who may change it. */
export function DutyRota({ duty, onChanged }: RotaProps) {
  return (
    <section aria-labelledby="rota">
      <h3 id="rota">{say.rotaTitle}</h3>
      <ul class="plain-list is-acted">
        {dutyLines(duty).map((line) => (
          <Line key={line.key} {...{ line, duty, onChanged }} />
        ))}
      </ul>
      <Disclosure title={say.addSpan}>{(close) => <AddSpan {...{ duty, onChanged, close }} />}</Disclosure>
    </section>
  );
}

/** For everybody else. */
export function DutyLines({ duty }: Pick<RotaProps, 'duty'>) {
  return (
    <ul class="plain-list">
      {dutyLines(duty).map(({ key, text }) => (
        <li key={key}>{text}</li>
      ))}
    </ul>
  );
}
