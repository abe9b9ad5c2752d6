// What holds for the whole plan: its name and crop, its end, how limits tighten, and the note.
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { words } from '../late-strings.ts';
import { temperatureUnit } from '../temperature-unit.ts';
import { NumberField, TextField } from './draft-field.tsx';
import { withOptional } from './edit-draft.ts';
import { PlanLine } from './plan-line.tsx';

interface Props {
  readonly draft: ProfileDocument;
  readonly onDraft: (draft: ProfileDocument) => void;
}

function PlanText({ draft, onDraft, part }: Props & { readonly part: 'name' | 'crop' | 'note' }) {
  return (
    <TextField
      where={`/${part}`}
      label={words.editor[part]}
      isLong={part === 'note'}
      value={draft[part]}
      onText={(text) => onDraft({ ...draft, [part]: text })}
    />
  );
}

export function PlanNames(props: Props) {
  return (
    <div class="plan-names">
      <PlanText {...props} part="name" />
      <PlanText {...props} part="crop" />
    </div>
  );
}

function End({ draft, onDraft }: Props) {
  return (
    <div class="said">
      <NumberField
        where="/endsAfterHours"
        label={words.editor.ends}
        line={{ before: words.editor.endsSaid, after: words.editor.afterClosing }}
        value={draft.endsAfterHours}
        onValue={(endsAfterHours) => onDraft({ ...draft, endsAfterHours })}
      />
      <TextField
        where="/endsNotBefore"
        label={words.editor.endsNotBefore}
        line={{ before: words.editor.earliest }}
        isShort={true}
        value={draft.endsNotBefore ?? ''}
        onText={(text) => onDraft(withOptional(draft, 'endsNotBefore', text.trim() === '' ? undefined : text.trim()))}
      />
    </div>
  );
}

/** The largest step of each quantity in an hour, in one sentence. */
function Rates({ draft, onDraft }: Props) {
  const { grace } = draft;
  return (
    <>
      <NumberField
        where="/grace/temperaturePerHour"
        label={words.editor.quantities.temperature}
        line={{ before: words.editor.graceSaid, after: temperatureUnit.value }}
        unit={temperatureUnit.value}
        kind="difference"
        value={grace.temperaturePerHour}
        onValue={(temperaturePerHour) => onDraft({ ...draft, grace: { ...grace, temperaturePerHour } })}
      />
      <NumberField
        where="/grace/humidityPerHour"
        label={words.editor.quantities.humidity}
        line={{ before: words.editor.graceAnd, after: `${words.units.humidity} ${words.editor.graceHour}` }}
        unit={words.units.humidity}
        value={grace.humidityPerHour}
        onValue={(humidityPerHour) => onDraft({ ...draft, grace: { ...grace, humidityPerHour } })}
      />
    </>
  );
}

export function PlanPace(props: Props) {
  const { draft, onDraft } = props;
  const { grace } = draft;
  return (
    <section class="plan-pace" aria-labelledby="pace-of-plan">
      <h2 id="pace-of-plan">{words.editor.plan}</h2>
      <End {...props} />
      <PlanLine
        where="/grace"
        name={words.editor.grace}
        gloss={words.editor.graceWhy}
        said={<Rates {...props} />}
        inSentence={['/grace/temperaturePerHour', '/grace/humidityPerHour']}
        source={grace.basis}
        more={words.editor.basis}
      >
        <TextField
          where="/grace/basis"
          label={words.editor.basis}
          value={grace.basis}
          onText={(basis) => onDraft({ ...draft, grace: { ...grace, basis } })}
        />
      </PlanLine>
      <PlanText {...props} part="note" />
    </section>
  );
}
