// Opens a batch in a chamber: what was grafted on what, how many, which profile, and whether the tent is closed already.

import { useState } from 'preact/hooks';
import type { ChamberView } from '../../shared/api/chambers.ts';
import { showNote } from '../announce.ts';
import { ApiProblem } from '../api.ts';
import { calls } from '../calls.ts';
import { nowMs } from '../clock.ts';
import { Choice, Field } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { LoadState } from '../parts/load-state.tsx';
import { useLoad } from '../parts/use-load.ts';
import { planText } from '../plan-text.ts';
import { zone } from '../session.ts';
import { words } from '../strings.ts';
import { instantOfWallTime, wallTime } from '../when.ts';
import { BatchFields, batchFactsOf } from './batch-fields.tsx';

type ClosedChoice = 'no' | 'now' | 'before';

interface Props {
  readonly chamber: ChamberView;
  /** The profile that is chosen already, if one is. */
  readonly profileId?: string;
  readonly onOpened: () => void;
}

function closedAtOf(fields: FormData): string | null {
  const choice = textOf(fields, 'closed');
  if (choice === 'no') return null;
  const atMs = choice === 'now' ? nowMs.peek() : instantOfWallTime(textOf(fields, 'closedAt'), zone.peek());
  if (atMs === null)
    throw new ApiProblem(words.batch.closedAtBad, 400, [{ where: 'closedAt', reason: words.batch.closedAtBad }]);
  return new Date(atMs).toISOString();
}

function bodyOf(fields: FormData, chamberId: string): object {
  const closedAt = closedAtOf(fields);
  return {
    ...{ chamberId, profileId: textOf(fields, 'profileId') },
    ...batchFactsOf(fields),
    // The tent was filled before it was closed, so the batch cannot have been opened later.
    ...(closedAt === null ? {} : { closedAt, openedAt: closedAt }),
  };
}

export function OpenBatch({ chamber, profileId = '', onOpened }: Props) {
  const { data: profiles, problem, reload } = useLoad(calls.profiles, 'profiles');
  const [closed, setClosed] = useState<ClosedChoice>('no');
  const send = async (fields: FormData) => {
    await calls.openBatch(bodyOf(fields, chamber.id));
    showNote(words.batch.opened(textOf(fields, 'code')));
    onOpened();
  };
  return (
    <section aria-labelledby="open-batch">
      <h2 id="open-batch">{words.batch.openTitle(chamber.name)}</h2>
      {profiles === undefined && <LoadState problem={problem} reload={reload} />}
      {profiles?.length === 0 && <p class="quiet-line">{words.batch.noProfiles}</p>}
      {profiles !== undefined && profiles.length > 0 && (
        <Form onSend={send} act={words.batch.open} label={words.batch.open}>
          <p class="quiet-line">{words.batch.openHint}</p>
          <Choice
            name="profileId"
            label={words.batch.profile}
            value={profileId}
            options={profiles.map(({ id, document }) => [
              id,
              words.batch.profileOption(planText(document.name), planText(document.crop)),
            ])}
          />
          <BatchFields />
          <Choice
            name="closed"
            label={words.batch.closedAlready}
            value={closed}
            onChoose={(value) => setClosed(value === 'now' || value === 'before' ? value : 'no')}
            options={[
              ['no', words.batch.notYet],
              ['now', words.batch.closedNow],
              ['before', words.batch.closedBefore],
            ]}
          />
          {closed === 'before' && (
            <Field
              name="closedAt"
              label={words.batch.closedAt}
              type="datetime-local"
              value={wallTime(nowMs.peek(), zone.peek())}
              required
            />
          )}
        </Form>
      )}
    </section>
  );
}
