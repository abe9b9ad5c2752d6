// The steps of the first batch: which plan, what was grafted, and closing the chamber.

import { useMemo } from 'preact/hooks';
import type { BatchView } from '../../shared/api/batches.ts';
import type { ChamberView } from '../../shared/api/chambers.ts';
import type { ProfileView } from '../../shared/api/profiles.ts';
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { OpenBatch } from '../pages/open-batch.tsx';
import { ActButton } from '../parts/act-button.tsx';
import { Choice } from '../parts/fields.tsx';
import { planText } from '../plan-text.ts';
import { chamberPath } from '../router.ts';
import { PlanStrip } from '../strip/plan-strip.tsx';
import { Step, type StepState } from './step.tsx';

interface PlanProps {
  readonly profiles: readonly ProfileView[];
  readonly chosen: string;
  readonly isChosen: boolean;
  readonly state: StepState;
  readonly onChoose: (id: string) => void;
  readonly onTake: () => void;
}

export function PlanStep({ profiles, chosen, isChosen, state, onChoose, onTake }: PlanProps) {
  const profile = useMemo(() => profiles.find(({ id }) => id === chosen) ?? profiles[0], [profiles, chosen]);
  return (
    <Step title={words.guide.plan} why={words.guide.planWhy} state={state}>
      {isChosen && profile !== undefined && <p>{words.guide.planDone(planText(profile.document.name))}</p>}
      {state === 'now' && profile !== undefined && (
        <div class="guide-plan">
          <Choice
            name="profile"
            label={words.batch.profile}
            value={profile.id}
            options={profiles.map(({ id, document }) => [
              id,
              words.batch.profileOption(planText(document.name), planText(document.crop)),
            ])}
            onChoose={onChoose}
          />
          <div class="strip">
            <PlanStrip document={profile.document} />
          </div>
          <button type="button" class="main" onClick={onTake}>
            {words.guide.planTake}
          </button>
        </div>
      )}
    </Step>
  );
}

interface BatchProps {
  readonly chamber: ChamberView | undefined;
  readonly batch: BatchView | undefined;
  readonly profileId: string;
  readonly state: StepState;
  readonly onOpened: () => void;
}

export function BatchStep({ chamber, batch, profileId, state, onOpened }: BatchProps) {
  return (
    <Step title={words.guide.batch} why={words.guide.batchWhy} state={state}>
      {batch !== undefined && <p>{words.guide.batchDone(batch.code, batch.chamberName)}</p>}
      {state === 'now' && chamber !== undefined && (
        <OpenBatch chamber={chamber} profileId={profileId} onOpened={onOpened} />
      )}
    </Step>
  );
}

interface CloseProps {
  readonly batch: BatchView | undefined;
  readonly state: StepState;
  readonly onClosed: () => void;
}

export function CloseStep({ batch, state, onClosed }: CloseProps) {
  return (
    <Step title={words.guide.close} why={words.guide.closeWhy} state={state}>
      {batch !== undefined && state === 'now' && (
        <ActButton kind="main" work={() => calls.closeChamber(batch.id)} done={words.batch.closed} onDone={onClosed}>
          {words.batch.closeChamber}
        </ActButton>
      )}
      {batch !== undefined && state === 'done' && (
        <p>
          <a class="roomy" href={chamberPath(batch.chamberId)}>
            {words.guide.closeDone(batch.chamberName)}
          </a>
        </p>
      )}
    </Step>
  );
}
