// What holds for the whole plan: its name and crop, its end, and how limits tighten.
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { words } from '../late-strings.ts';
import { temperatureUnit } from '../temperature-unit.ts';
import { NumberField, TextField } from './draft-field.tsx';
import { withOptional } from './edit-draft.ts';

interface Props {
  readonly draft: ProfileDocument;
  readonly onDraft: (draft: ProfileDocument) => void;
}

export function PlanNames({ draft, onDraft }: Props) {
  const put = <Key extends 'name' | 'crop' | 'note'>(key: Key) => ({
    where: `/${key}`,
    label: words.editor[key],
    value: draft[key],
    onText: (text: string) => onDraft({ ...draft, [key]: text }),
  });
  return (
    <div class="plan-names">
      <TextField {...put('name')} />
      <TextField {...put('crop')} />
      <TextField {...put('note')} isLong={true} />
    </div>
  );
}

export function PlanPace({ draft, onDraft }: Props) {
  const { grace } = draft;
  return (
    <section aria-labelledby="pace-of-plan">
      <h2 id="pace-of-plan">{words.editor.plan}</h2>
      <div class="limit-fields">
        <NumberField
          where="/endsAfterHours"
          label={words.editor.ends}
          value={draft.endsAfterHours}
          onValue={(endsAfterHours) => onDraft({ ...draft, endsAfterHours })}
        />
        <TextField
          where="/endsNotBefore"
          label={words.editor.endsNotBefore}
          isShort={true}
          value={draft.endsNotBefore ?? ''}
          onText={(text) => onDraft(withOptional(draft, 'endsNotBefore', text.trim() === '' ? undefined : text.trim()))}
        />
        <NumberField
          where="/silenceMinutes"
          label={words.editor.silence}
          value={draft.silenceMinutes}
          onValue={(silenceMinutes) => onDraft({ ...draft, silenceMinutes })}
        />
      </div>
      <fieldset class="limit">
        <legend>{words.editor.grace}</legend>
        <p class="details">{words.editor.graceWhy}</p>
        <div class="limit-fields">
          <NumberField
            where="/grace/temperaturePerHour"
            label={words.editor.quantities.temperature}
            unit={temperatureUnit.value}
            kind="difference"
            value={grace.temperaturePerHour}
            onValue={(temperaturePerHour) => onDraft({ ...draft, grace: { ...grace, temperaturePerHour } })}
          />
          <NumberField
            where="/grace/humidityPerHour"
            label={words.editor.quantities.humidity}
            unit={words.units.humidity}
            value={grace.humidityPerHour}
            onValue={(humidityPerHour) => onDraft({ ...draft, grace: { ...grace, humidityPerHour } })}
          />
          <TextField
            where="/grace/basis"
            label={words.editor.basis}
            value={grace.basis}
            onText={(basis) => onDraft({ ...draft, grace: { ...grace, basis } })}
          />
        </div>
      </fieldset>
    </section>
  );
}
