// Says quietly that alarms of a chamber's air are silent, by whom and until when, and lets whoever worked in the tent say that it is done.
import type { ChamberView } from '../../shared/api/chambers.ts';
import { calls } from '../calls.ts';
import { putChamber } from '../chamber-store.ts';
import { disturbanceOf } from '../disturbance.ts';
import { mayAct, zone } from '../session.ts';
import { words } from '../strings.ts';
import { ActButton } from './act-button.tsx';

interface Props {
  readonly chamber: ChamberView;
  readonly nowMs: number;
}

export function DisturbedAir({ chamber, nowMs }: Props) {
  const disturbance = disturbanceOf(chamber.suppression, nowMs, zone.value);
  if (disturbance === null) return null;
  const { batch } = chamber;
  const end = async (batchId: string) => {
    await calls.log(batchId, { kind: 'work-done' });
    putChamber(await calls.chamber(chamber.id));
  };
  return (
    <div class="disturbed-air">
      <p>{disturbance.sentence}</p>
      {disturbance.isAtWork && batch !== null && mayAct.value && (
        <ActButton
          work={() => end(batch.id)}
          done={words.logKinds['work-done']}
          label={words.disturbance.workDoneIn(chamber.name)}
        >
          {words.disturbance.workDone}
        </ActButton>
      )}
    </div>
  );
}
