// Opening a batch and finishing one from the list of batches, for whoever comes from there and not from a chamber.
import { useState } from 'preact/hooks';
import type { BatchView } from '../../shared/api/batches.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { allChambers } from '../chamber-store.ts';
import { words } from '../late-strings.ts';
import { Disclosure } from '../parts/disclosure.tsx';
import { Choice, Field } from '../parts/fields.tsx';
import { Form, numberOf, textOf } from '../parts/form.tsx';
import { mayAct } from '../session.ts';
import { OpenBatch } from './open-batch.tsx';

interface Props {
  readonly open: readonly BatchView[];
  readonly onChanged: () => void;
}

function OpenSomewhere({ onOpened }: { readonly onOpened: () => void }) {
  const empty = allChambers.value.filter(({ batch }) => batch === null);
  const [chosen, setChosen] = useState('');
  const chamber = empty.find(({ id }) => id === chosen) ?? empty[0];
  if (chamber === undefined) return <p>{words.batches.allFull}</p>;
  return (
    <>
      <Choice
        name="chamber"
        label={words.batches.whichChamber}
        value={chamber.id}
        options={empty.map(({ id, name }) => [id, name])}
        onChoose={setChosen}
      />
      <OpenBatch key={chamber.id} chamber={chamber} onOpened={onOpened} />
    </>
  );
}

/** When it was closed; one that is still being filled comes last. */
function closedMs({ closedAt }: BatchView): number {
  return closedAt === null ? Number.POSITIVE_INFINITY : Date.parse(closedAt);
}

/** The oldest stands first: it is the one that is ready, and none is finished by mistake that has just begun. */
function FinishOne({ open, onChanged, close }: Props & { readonly close: () => void }) {
  const [chosen, setChosen] = useState('');
  const oldestFirst = [...open].sort((one, other) => closedMs(one) - closedMs(other));
  const batch = oldestFirst.find(({ id }) => id === chosen) ?? oldestFirst[0];
  if (batch === undefined) return null;
  const send = async (fields: FormData) => {
    await calls.finish(batch.id, numberOf(fields, 'takenPlants'), textOf(fields, 'note'));
    showNote(words.batch.finished);
    close();
    onChanged();
  };
  return (
    <Form onSend={send} act={words.batch.finish} onCancel={close} label={words.batch.finishTitle}>
      <Choice
        name="batch"
        label={words.batches.whichBatch}
        value={batch.id}
        options={oldestFirst.map(({ id, code, chamberName }) => [id, words.batches.batchIn(code, chamberName)])}
        onChoose={setChosen}
      />
      <p>{words.batch.finishWhy(batch.plants)}</p>
      <Field name="takenPlants" label={words.batch.taken} type="number" min={0} required />
      <Field name="note" label={words.batch.noteLabel} />
    </Form>
  );
}

export function BatchActs({ open, onChanged }: Props) {
  if (!mayAct.value) return null;
  return (
    <div class="acts">
      <Disclosure title={words.batches.openOne} kind="main">
        {(close) => (
          <OpenSomewhere
            onOpened={() => {
              close();
              onChanged();
            }}
          />
        )}
      </Disclosure>
      {open.length > 0 && (
        <Disclosure title={words.batches.finishOne}>
          {(close) => <FinishOne open={open} onChanged={onChanged} close={close} />}
        </Disclosure>
      )}
    </div>
  );
}
