// What can be done about an alarm: acknowledge in one tap, shelve for a time with a reason, take off the shelf.
import type { AlarmView } from '../../shared/api/alarms.ts';
import { isOpen } from '../alarm-order.ts';
import { alarmSentence } from '../alarm-sentence.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { mayAct } from '../session.ts';
import { words } from '../strings.ts';
import { ActButton } from './act-button.tsx';
import { Disclosure } from './disclosure.tsx';
import { Field } from './fields.tsx';
import { Form, numberOf, textOf } from './form.tsx';

export function AcknowledgeButton({ alarm, onDone }: { readonly alarm: AlarmView; readonly onDone?: () => void }) {
  if (!mayAct.value || !isOpen(alarm)) return null;
  return (
    <ActButton
      kind="main"
      work={() => calls.acknowledge(alarm.id)}
      done={words.acts.acknowledged}
      label={words.acts.acknowledgeThis(alarmSentence(alarm))}
      {...(onDone === undefined ? {} : { onDone })}
    >
      {words.acts.acknowledge}
    </ActButton>
  );
}

function ShelveForm({ alarm, close }: { readonly alarm: AlarmView; readonly close: () => void }) {
  const send = async (fields: FormData) => {
    await calls.shelve(alarm.id, numberOf(fields, 'minutes'), textOf(fields, 'reason'));
    showNote(words.acts.shelved);
    close();
  };
  return (
    <Form onSend={send} act={words.acts.shelve} onCancel={close} label={words.acts.shelveTitle}>
      <p>{words.acts.shelveHint}</p>
      <Field name="minutes" label={words.acts.minutes} type="number" value={30} min={1} max={1440} required />
      <Field name="reason" label={words.acts.reason} required />
    </Form>
  );
}

export function AlarmActs({ alarm, onDone }: { readonly alarm: AlarmView; readonly onDone?: () => void }) {
  // What is quiet by design or by a manager cannot be shelved on top.
  if (!mayAct.value || ['normal', 'suppressed', 'out-of-service'].includes(alarm.state)) return null;
  return (
    <div class="acts">
      <AcknowledgeButton alarm={alarm} {...(onDone === undefined ? {} : { onDone })} />
      {alarm.state === 'shelved' ? (
        <ActButton work={() => calls.unshelve(alarm.id)} done={words.acts.unshelved}>
          {words.acts.unshelve}
        </ActButton>
      ) : (
        <Disclosure title={words.acts.shelve}>{(close) => <ShelveForm alarm={alarm} close={close} />}</Disclosure>
      )}
    </div>
  );
}
