// What a person sees or does, logged in one tap each.
import { useState } from 'preact/hooks';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { nowMs } from '../clock.ts';
import { ActButton } from '../parts/act-button.tsx';
import { Disclosure } from '../parts/disclosure.tsx';
import { Field } from '../parts/fields.tsx';
import { Form, numberOf, textOf } from '../parts/form.tsx';
import { zone } from '../session.ts';
import { words } from '../strings.ts';
import { clockTime } from '../when.ts';

const gapChoices = [0, 5, 10, 20, 30, 50, 75, 100] as const;

const workMinutes = [10, 20, 30, 60] as const;

type OneTap = 'mist' | 'erect' | 'limp' | 'film-wet' | 'film-dry';
const oneTaps: readonly (readonly [OneTap, string])[] = [
  ['mist', words.log.misted],
  ['erect', words.log.erect],
  ['limp', words.log.limp],
  ['film-wet', words.log.filmWet],
  ['film-dry', words.log.filmDry],
];

interface Props {
  readonly batchId: string;
  readonly onLogged: () => void;
}

function loggedWords(what: string): string {
  return words.log.logged(what, clockTime(nowMs.peek(), zone.peek()));
}

function GapForm({ batchId, onLogged, close }: Props & { readonly close: () => void }) {
  const log = async (gapPercent: number) => {
    await calls.log(batchId, { kind: 'gap', gapPercent });
    showNote(loggedWords(`${words.logKinds.gap}, ${words.log.gapWords(gapPercent)}`));
    close();
    onLogged();
  };
  return (
    <>
      <p>{words.log.gapTitle}</p>
      <div class="gap-choices">
        {gapChoices.map((percent) => (
          <ActButton key={percent} work={() => log(percent)}>
            {percent} {words.units.percent}
          </ActButton>
        ))}
      </div>
      <Form onSend={(fields) => log(numberOf(fields, 'gapPercent'))} act={words.log.gapSet} onCancel={close}>
        <Field name="gapPercent" label={words.log.gapOther} type="number" min={0} max={100} step="any" required />
      </Form>
    </>
  );
}

function WorkingForm({ batchId, onLogged, close }: Props & { readonly close: () => void }) {
  const log = async (minutes: number) => {
    await calls.log(batchId, { kind: 'working', minutes });
    showNote(loggedWords(`${words.logKinds.working}, ${words.log.workingFor(minutes)}`));
    close();
    onLogged();
  };
  return (
    <>
      <p>{words.log.workingTitle}</p>
      <div class="gap-choices">
        {workMinutes.map((minutes) => (
          <ActButton key={minutes} work={() => log(minutes)}>
            {words.log.workingFor(minutes)}
          </ActButton>
        ))}
      </div>
    </>
  );
}

function NoteForm({ batchId, onLogged, close }: Props & { readonly close: () => void }) {
  const send = async (fields: FormData) => {
    await calls.log(batchId, { kind: 'note', note: textOf(fields, 'note') });
    showNote(loggedWords(words.logKinds.note));
    close();
    onLogged();
  };
  return (
    <Form onSend={send} act={words.log.noteSave} onCancel={close}>
      <Field name="note" label={words.log.noteText} required />
    </Form>
  );
}

export function LogButtons({ batchId, onLogged }: Props) {
  const [isLimp, setLimp] = useState(false);
  const logged = (kind: OneTap) => {
    showNote(loggedWords(words.logKinds[kind]));
    setLimp(kind === 'limp');
    onLogged();
  };
  return (
    <section aria-labelledby="log-acts">
      <h2 id="log-acts">{words.log.title}</h2>
      <div class="log-acts">
        {oneTaps.map(([kind, label]) => (
          <ActButton key={kind} work={() => calls.log(batchId, { kind })} onDone={() => logged(kind)}>
            {label}
          </ActButton>
        ))}
        <Disclosure title={words.log.gap}>
          {(close) => <GapForm batchId={batchId} onLogged={onLogged} close={close} />}
        </Disclosure>
        <Disclosure title={words.log.working}>
          {(close) => <WorkingForm batchId={batchId} onLogged={onLogged} close={close} />}
        </Disclosure>
        <Disclosure title={words.log.note}>
          {(close) => <NoteForm batchId={batchId} onLogged={onLogged} close={close} />}
        </Disclosure>
      </div>
      {isLimp && (
        <p class="first-aid" role="alert">
          {words.log.limpAdvice}
        </p>
      )}
    </section>
  );
}
