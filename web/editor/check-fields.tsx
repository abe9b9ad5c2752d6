// The checks of a draft: what is asked, what to do when the answer is no, and when.
import type { CheckPlan, ProfileDocument } from '../../shared/healing/profile.ts';
import { type StageName, stageNames } from '../../shared/healing/stage-name.ts';
import { words } from '../late-strings.ts';
import { checkTimeWords } from '../limit-words.ts';
import { FaultAt, NumberField, OptionalNumberField, SelectField, TextField, useFaultBelow } from './draft-field.tsx';
import { withCheck, withNewCheck, withOptional, withoutCheck } from './edit-draft.ts';
import { useFold } from './use-fold.ts';

interface CheckProps {
  readonly where: string;
  readonly check: CheckPlan;
  readonly number: number;
  readonly stages: readonly StageName[];
  readonly onCheck: (check: CheckPlan) => void;
  readonly onRemove: () => void;
}

function Moment({ where, check, stages, onCheck }: CheckProps) {
  const from = check.atStage;
  const options = [...new Set([...stages, ...(from === undefined ? [] : [from])])].map(
    (stage) => [stage, words.editor.stageStart(words.editor.stageNames[stage])] as const,
  );
  const put = <Key extends 'afterHours' | 'everyHours' | 'untilHours'>(key: Key) => ({
    where: `${where}/${key}`,
    value: check[key],
    onValue: (value: number | undefined) => onCheck(withOptional(check, key, value)),
  });
  return (
    <div class="limit-fields">
      <SelectField
        where={`${where}/atStage`}
        label={words.editor.counted}
        value={from ?? ''}
        options={[['', words.editor.closing], ...options]}
        onChoose={(value) =>
          onCheck(
            withOptional(
              check,
              'atStage',
              stageNames.find((name) => name === value),
            ),
          )
        }
      />
      <OptionalNumberField label={words.editor.after} {...put('afterHours')} />
      <TextField
        where={`${where}/notBefore`}
        label={words.editor.notBefore}
        isShort={true}
        value={check.notBefore ?? ''}
        onText={(text) => onCheck(withOptional(check, 'notBefore', text.trim() === '' ? undefined : text.trim()))}
      />
      <OptionalNumberField label={words.editor.every} {...put('everyHours')} />
      <OptionalNumberField label={words.editor.until} {...put('untilHours')} />
      <NumberField
        where={`${where}/overdueMinutes`}
        label={words.editor.overdue}
        value={check.overdueMinutes}
        onValue={(overdueMinutes) => onCheck({ ...check, overdueMinutes })}
      />
    </div>
  );
}

function CheckItem(props: CheckProps) {
  const { where, check, number, onCheck, onRemove } = props;
  const name = words.editor.check(number, check.question);
  const fold = useFold(useFaultBelow(where), check.question === '');
  return (
    <li>
      <details {...fold}>
        <summary>
          {name} <small>{checkTimeWords(check)}</small>
        </summary>
        <fieldset class="check">
          <legend class="unseen">{name}</legend>
          <FaultAt where={where} />
          <FaultAt where={`${where}/id`} />
          <TextField
            where={`${where}/question`}
            label={words.editor.question}
            value={check.question}
            onText={(question) => onCheck({ ...check, question })}
          />
          <TextField
            where={`${where}/ifNo`}
            label={words.editor.ifNo}
            value={check.ifNo}
            onText={(ifNo) => onCheck({ ...check, ifNo })}
          />
          <Moment {...props} />
          <SelectField
            where={`${where}/sameAs`}
            label={words.editor.sameAs}
            value={check.sameAs ?? ''}
            options={Object.entries(words.editor.sameAsOptions)}
            onChoose={(value) =>
              onCheck(withOptional(check, 'sameAs', value === 'erect' || value === 'film-wet' ? value : undefined))
            }
          />
          <TextField
            where={`${where}/basis`}
            label={words.editor.basis}
            value={check.basis}
            onText={(basis) => onCheck({ ...check, basis })}
          />
          <button type="button" class="quiet" aria-label={words.editor.removeCheck(name)} onClick={onRemove}>
            {words.people.remove}
          </button>
        </fieldset>
      </details>
    </li>
  );
}

interface Props {
  readonly draft: ProfileDocument;
  readonly onDraft: (draft: ProfileDocument) => void;
}

/** A list that is long on a phone, where it is folded until it is asked for or something in it is at fault. */
export function CheckList({ draft, onDraft }: Props) {
  const stages = draft.stages.map(({ stage }) => stage);
  const fold = useFold(useFaultBelow('/checks'), matchMedia('(min-width: 700px)').matches);
  return (
    <section class="plan-checks" aria-labelledby="checks-of-plan">
      <details {...fold}>
        <summary>
          <h2 id="checks-of-plan">{words.editor.checks}</h2> <small>{draft.checks.length}</small>
        </summary>
        {draft.checks.length === 0 && <p class="quiet-line">{words.editor.noChecks}</p>}
        <ul class="check-edits">
          {draft.checks.map((check, index) => (
            <CheckItem
              key={check.id}
              where={`/checks/${index}`}
              check={check}
              number={index + 1}
              stages={stages}
              onCheck={(next) => onDraft(withCheck(draft, index, next))}
              onRemove={() => onDraft(withoutCheck(draft, index))}
            />
          ))}
        </ul>
      </details>
      <button type="button" onClick={() => onDraft(withNewCheck(draft, words.editor.ours))}>
        {words.editor.addCheck}
      </button>
    </section>
  );
}
