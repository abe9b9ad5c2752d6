// Steering a batch: close the chamber, hold and resume its clock, move on to the next stage, count the take.
import type { BatchView } from '../../shared/api/batches.ts';
import type { StageName } from '../../shared/healing/profile.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { ActButton } from '../parts/act-button.tsx';
import { Disclosure, Sure } from '../parts/disclosure.tsx';
import { Field } from '../parts/fields.tsx';
import { Form, numberOf, textOf } from '../parts/form.tsx';
import { words } from '../strings.ts';
import { CorrectBatch } from './correct-batch.tsx';

interface Props {
  readonly batch: BatchView;
  readonly onChanged: () => void;
}

function nextStage(batch: BatchView): StageName | null {
  const names = batch.stages.map(({ stage }) => stage);
  const at = batch.stage === null ? -1 : names.indexOf(batch.stage);
  return at < 0 ? null : (names[at + 1] ?? null);
}

function Hold({ batch, onChanged }: Props) {
  const send = (close: () => void) => async (fields: FormData) => {
    await calls.hold(batch.id, textOf(fields, 'reason'));
    showNote(words.batch.held);
    close();
    onChanged();
  };
  return (
    <Disclosure title={words.batch.hold}>
      {(close) => (
        <Form onSend={send(close)} act={words.batch.hold} onCancel={close} label={words.batch.holdTitle}>
          <p>{words.batch.holdWhy}</p>
          <Field name="reason" label={words.batch.holdReason} />
        </Form>
      )}
    </Disclosure>
  );
}

function Resume({ batch, onChanged, kind = 'plain' }: Props & { readonly kind?: 'main' | 'plain' }) {
  return (
    <ActButton kind={kind} work={() => calls.resume(batch.id)} done={words.batch.resumed} onDone={onChanged}>
      {words.batch.resume}
    </ActButton>
  );
}

function MoveOn({ batch, onChanged }: Props) {
  const stage = nextStage(batch);
  if (stage === null || batch.closedAt === null) return null;
  const name = words.stages[stage];
  return (
    <Disclosure title={words.batch.moveOn(name)}>
      {(close) => (
        <Sure
          question={words.batch.moveOnSure(name)}
          yes={
            <>
              <ActButton
                kind="main"
                work={() => calls.changeBatch(batch.id, { moveOnTo: stage })}
                done={words.batch.movedOn(name)}
                onDone={() => {
                  close();
                  onChanged();
                }}
              >
                {words.batch.moveOnYes}
              </ActButton>
              <button type="button" class="plain" onClick={close}>
                {words.acts.cancel}
              </button>
            </>
          }
        />
      )}
    </Disclosure>
  );
}

function Finish({ batch, onChanged }: Props) {
  const send = (close: () => void) => async (fields: FormData) => {
    await calls.finish(batch.id, numberOf(fields, 'takenPlants'), textOf(fields, 'note'));
    showNote(words.batch.finished);
    close();
    onChanged();
  };
  return (
    <Disclosure title={words.batch.finish}>
      {(close) => (
        <Form onSend={send(close)} act={words.batch.finish} onCancel={close} label={words.batch.finishTitle}>
          <p>{words.batch.finishWhy(batch.plants)}</p>
          <Field name="takenPlants" label={words.batch.taken} type="number" min={0} required />
          <Field name="note" label={words.batch.noteLabel} />
        </Form>
      )}
    </Disclosure>
  );
}

/** The one step that a batch waits for, to stand where it is seen first: closing the chamber, or going on after a hold. */
export function AwaitedStep({ batch, onChanged }: Props) {
  if (batch.closedAt !== null && !batch.onHold) return null;
  const isOpen = batch.closedAt === null;
  return (
    <section aria-label={isOpen ? words.batch.closeChamber : words.batch.resume}>
      <p class="advice">{isOpen ? words.batch.closeChamberWhy : words.batch.holdStands}</p>
      <div class="acts">
        {isOpen ? (
          <ActButton kind="main" work={() => calls.closeChamber(batch.id)} done={words.batch.closed} onDone={onChanged}>
            {words.batch.closeChamber}
          </ActButton>
        ) : (
          <Resume batch={batch} onChanged={onChanged} kind="main" />
        )}
      </div>
    </section>
  );
}

export function SteerBatch({ batch, onChanged }: Props) {
  return (
    <section class="steer" aria-labelledby="steer">
      <h2 id="steer">{words.batch.steer}</h2>
      <div class="acts">
        {batch.closedAt !== null &&
          (batch.onHold ? <Resume {...{ batch, onChanged }} /> : <Hold {...{ batch, onChanged }} />)}
        <MoveOn batch={batch} onChanged={onChanged} />
        <Finish batch={batch} onChanged={onChanged} />
        <CorrectBatch batch={batch} onChanged={onChanged} />
      </div>
    </section>
  );
}
