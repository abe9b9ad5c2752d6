// The phones of the one who is signed in: adding this one, testing each with an honest result, or exactly what is missing.
import { useEffect, useState } from 'preact/hooks';
import type { PhonesView, PhoneView } from '../../shared/api/telling.ts';
import { showNote } from '../announce.ts';
import { ApiProblem } from '../api.ts';
import { calls } from '../calls.ts';
import { slowNowMs } from '../clock.ts';
import { words } from '../late-strings.ts';
import { ActButton } from '../parts/act-button.tsx';
import { Field } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { LoadState } from '../parts/load-state.tsx';
import { Section } from '../parts/section.tsx';
import { useLoad } from '../parts/use-load.ts';
import { addThisPhone, pushHindrance, renewPhone } from '../push-subscription.ts';
import { zone } from '../session.ts';
import { dayAndTime } from '../when.ts';
import { PushNeedsList } from './push-needs-list.tsx';

const { people: say } = words;

const CONFIRMED_WITHIN_MS = 4_000;

function Phone({ phone, onChanged }: { readonly phone: PhoneView; readonly onChanged: () => void }) {
  const [result, setResult] = useState<string>();
  const test = async () => {
    const { delivered, reason } = await calls.testPhone(phone.id);
    setResult(delivered ? say.testDelivered(phone.name) : say.testFailed(phone.name, reason));
    onChanged();
    // The phone confirms within seconds, if it does.
    if (delivered) setTimeout(onChanged, CONFIRMED_WITHIN_MS);
  };
  const time = (at: string) => dayAndTime(Date.parse(at), slowNowMs.value, zone.value);
  return (
    <li class="person">
      <h3>{phone.name}</h3>
      <p class="details">
        {phone.lastResult === null || phone.lastResultAt === null
          ? say.neverSent
          : say.lastResult(phone.lastResult, time(phone.lastResultAt))}{' '}
        {phone.confirmedAt === null ? say.neverConfirmed : say.confirmed(time(phone.confirmedAt))}
        {phone.hasOldKey && ` ${say.oldKey}`}
      </p>
      <ActButton work={test} label={say.testFor(phone.name)}>
        {say.test}
      </ActButton>
      <ActButton work={() => calls.removePhone(phone.id)} label={say.removeFor(phone.name)} onDone={onChanged}>
        {say.remove}
      </ActButton>
      {result !== undefined && (
        <p class="test-result" role="status">
          {result}
        </p>
      )}
    </li>
  );
}

/** What the browser says goes to the form like what the service says. */
async function subscribed(name: string, pushKey: string): Promise<void> {
  try {
    await addThisPhone(name, pushKey);
  } catch (problem) {
    if (problem instanceof DOMException)
      throw new ApiProblem(problem.name === 'NotAllowedError' ? say.denied : say.browserSaid(problem.message), 0);
    throw problem;
  }
}

function AddPhone({ pushKey, onChanged }: { readonly pushKey: string; readonly onChanged: () => void }) {
  const send = async (fields: FormData) => {
    await subscribed(textOf(fields, 'name') || say.phoneDefault, pushKey);
    showNote(say.phoneAdded);
    onChanged();
  };
  return (
    <Form onSend={send} act={say.addPhone} label={say.addPhone}>
      <Field name="name" label={say.phoneName} value={say.phoneDefault} required autoComplete="off" />
    </Form>
  );
}

function useRenewal(pushKey: string | undefined, onChanged: () => void): void {
  useEffect(() => {
    if (pushKey === undefined || pushKey === '') return;
    renewPhone(say.phoneDefault, pushKey)
      .then((isNew) => {
        if (!isNew) return;
        showNote(say.rekey);
        onChanged();
      })
      .catch((problem: unknown) => showNote(problem instanceof Error ? problem.message : say.noKey, true));
  }, [pushKey]);
}

/** Phones that take no more alerts, until their person has seen it. */
function LostPhones({ lost, onChanged }: { readonly lost: PhonesView['lost']; readonly onChanged: () => void }) {
  return lost.map(({ id, name, reason, lostAt }) => (
    <div key={id} class="hindrance">
      <p>{say.lostPhone(name, reason, dayAndTime(Date.parse(lostAt), slowNowMs.value, zone.value))}</p>
      <ActButton kind="quiet" work={() => calls.forgetLostPhone(id)} onDone={onChanged}>
        {say.lostSeen}
      </ActButton>
    </div>
  ));
}

export function MyPhones() {
  const phones = useLoad(calls.phones, 'phones');
  useRenewal(phones.data?.pushKey, phones.reload);
  return (
    <Section id="phones" title={say.phones}>
      <p>{say.phonesIntro}</p>
      {phones.data === undefined ? (
        <LoadState {...phones} />
      ) : (
        <>
          <LostPhones lost={phones.data.lost} onChanged={phones.reload} />
          {phones.data.items.length === 0 && <p class="quiet-line">{say.noPhones}</p>}
          <ul class="person-list">
            {phones.data.items.map((phone) => (
              <Phone key={phone.id} phone={phone} onChanged={phones.reload} />
            ))}
          </ul>
          <PushNeedsList phones={phones.data} />
          {pushHindrance(phones.data.pushKey) === null && (
            <AddPhone pushKey={phones.data.pushKey} onChanged={phones.reload} />
          )}
        </>
      )}
    </Section>
  );
}
