// One chamber on the wall, over the whole screen: the day, what is wrong since when, who has it, what to do, and its strip.
import { chamberState } from '../chamber-state.ts';
import { chamberSignal } from '../chamber-store.ts';
import { slowNowMs } from '../clock.ts';
import { AlarmDetails } from '../parts/alarm-details.tsx';
import { ClimateFigures } from '../parts/climate-figures.tsx';
import { DisturbedAir } from '../parts/disturbed-air.tsx';
import { Folio } from '../parts/folio.tsx';
import { NextDue } from '../parts/next-due.tsx';
import { StateSentence } from '../parts/state-sentence.tsx';
import { zone } from '../session.ts';
import { HealingStrip } from '../strip/healing-strip.tsx';
import { batchLine, stageLine } from './chamber-row.tsx';

export function WallChamber({ id }: { readonly id: string }) {
  const chamber = chamberSignal(id).value;
  const nowMs = slowNowMs.value;
  if (chamber === undefined) return null;
  const state = chamberState(chamber, nowMs, zone.value);
  return (
    <article
      class="row wall-chamber"
      data-urgency={state.urgency}
      data-priority={state.alarm?.priority}
      aria-labelledby="wall-name"
    >
      <Folio batch={chamber.batch} />
      <div class="who">
        <h2 id="wall-name">{chamber.name}</h2>
        <p>{batchLine(chamber)}</p>
        <p class="stage">{stageLine(chamber)}</p>
      </div>
      <ClimateFigures chamber={chamber} nowMs={nowMs} />
      <div class="say">
        <StateSentence state={state} />
        {state.alarm !== null && <AlarmDetails alarm={state.alarm} nowMs={nowMs} zone={zone.value} />}
        {state.advice !== '' && <p class="advice">{state.advice}</p>}
        <DisturbedAir chamber={chamber} nowMs={nowMs} />
        {state.asked === null && <NextDue chamber={chamber} nowMs={nowMs} zone={zone.value} />}
      </div>
      <HealingStrip chamber={chamber} />
    </article>
  );
}
