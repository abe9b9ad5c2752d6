// Rules of a chamber that raise no alarm for now: who took them out of service, why and since when. A manager takes them out and returns them.
import { chamberRuleIds } from '../../shared/alarms/alarm.ts';
import type { ChamberView } from '../../shared/api/chambers.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { putChamber } from '../chamber-store.ts';
import { slowNowMs } from '../clock.ts';
import { ActButton } from '../parts/act-button.tsx';
import { Disclosure } from '../parts/disclosure.tsx';
import { Choice, Field } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { maySetUp, zone } from '../session.ts';
import { words } from '../strings.ts';
import { dayAndTime } from '../when.ts';

type Taken = ChamberView['outOfService'][number];

interface Props {
  readonly chamber: ChamberView;
}

function TakenRule({ chamber, taken }: Props & { readonly taken: Taken }) {
  const rule = words.rules[taken.rule];
  const since = dayAndTime(Date.parse(taken.at), slowNowMs.value, zone.value);
  return (
    <li>
      <p>
        <b>{rule}</b> {taken.reason}
      </p>
      <p class="details">{words.service.takenBy(taken.by, since)}</p>
      {maySetUp.value && (
        <ActButton
          kind="quiet"
          work={async () => putChamber(await calls.returnToService(chamber.id, taken.rule))}
          done={words.service.returned(rule)}
          label={words.service.returnThis(rule)}
        >
          {words.service.return}
        </ActButton>
      )}
    </li>
  );
}

function TakeOutForm({ chamber, close }: Props & { readonly close: () => void }) {
  const inService = chamberRuleIds.filter((rule) => chamber.outOfService.every((taken) => taken.rule !== rule));
  const send = async (fields: FormData) => {
    const rule = inService.find((one) => one === textOf(fields, 'rule'));
    if (rule === undefined) return;
    putChamber(await calls.takeOutOfService(chamber.id, rule, textOf(fields, 'reason')));
    showNote(words.service.taken(words.rules[rule]));
    close();
  };
  return (
    <Form onSend={send} act={words.service.take} onCancel={close} label={words.service.takeTitle}>
      <p>{words.service.hint}</p>
      <Choice name="rule" label={words.service.rule} options={inService.map((rule) => [rule, words.rules[rule]])} />
      <Field name="reason" label={words.acts.reason} required autoComplete="off" />
    </Form>
  );
}

export function RulesOutOfService({ chamber }: Props) {
  const { outOfService } = chamber;
  if (outOfService.length === 0 && !maySetUp.value) return null;
  return (
    <section class="rules-out" aria-label={words.service.title}>
      {outOfService.length > 0 && (
        <>
          <h2>{words.service.title}</h2>
          <ul class="plain-list">
            {outOfService.map((taken) => (
              <TakenRule key={taken.rule} chamber={chamber} taken={taken} />
            ))}
          </ul>
        </>
      )}
      {maySetUp.value && outOfService.length < chamberRuleIds.length && (
        <Disclosure title={words.service.takeTitle} kind="quiet">
          {(close) => <TakeOutForm chamber={chamber} close={close} />}
        </Disclosure>
      )}
    </section>
  );
}
