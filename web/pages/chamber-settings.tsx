// The chamber itself: its name, and taking it away when it is empty. For managers.
import type { ChamberView } from '../../shared/api/chambers.ts';
import { calls } from '../calls.ts';
import { loadEverything } from '../live.ts';
import { goTo } from '../navigation.ts';
import { ActButton } from '../parts/act-button.tsx';
import { Disclosure, Sure } from '../parts/disclosure.tsx';
import { Field } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { words } from '../strings.ts';

function Rename({ chamber, close }: { readonly chamber: ChamberView; readonly close: () => void }) {
  const send = async (fields: FormData) => {
    await calls.renameChamber(chamber.id, textOf(fields, 'name'));
    await loadEverything();
    close();
  };
  return (
    <Form onSend={send} act={words.chamber.save} onCancel={close}>
      <Field name="name" label={words.chamber.newName} value={chamber.name} required autoComplete="off" />
    </Form>
  );
}

function Remove({ chamber, close }: { readonly chamber: ChamberView; readonly close: () => void }) {
  const gone = () => {
    void loadEverything();
    goTo('/');
  };
  return (
    <Sure
      question={words.chamber.removeSure}
      yes={
        <>
          <ActButton
            kind="main"
            work={() => calls.removeChamber(chamber.id)}
            done={words.chamber.removed}
            onDone={gone}
          >
            {words.chamber.remove}
          </ActButton>
          <button type="button" class="plain" onClick={close}>
            {words.acts.cancel}
          </button>
        </>
      }
    />
  );
}

export function ChamberSettings({ chamber }: { readonly chamber: ChamberView }) {
  return (
    <section class="acts chamber-settings" aria-label={words.chamber.title}>
      <Disclosure title={words.chamber.rename} kind="quiet">
        {(close) => <Rename chamber={chamber} close={close} />}
      </Disclosure>
      {chamber.batch === null && (
        <Disclosure title={words.chamber.remove} kind="quiet">
          {(close) => <Remove chamber={chamber} close={close} />}
        </Disclosure>
      )}
    </section>
  );
}
