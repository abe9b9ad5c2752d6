// Chambers on the wall, one line each: day, name, state, figures, what is next.
import { chamberState } from '../chamber-state.ts';
import { chamberSignal } from '../chamber-store.ts';
import { slowNowMs } from '../clock.ts';
import { ClimateFigures } from '../parts/climate-figures.tsx';
import { Folio } from '../parts/folio.tsx';
import { NextDue } from '../parts/next-due.tsx';
import { StateSentence } from '../parts/state-sentence.tsx';
import { zone } from '../session.ts';
import { stageLine } from './chamber-row.tsx';

function WallRow({ id }: { readonly id: string }) {
  const chamber = chamberSignal(id).value;
  const nowMs = slowNowMs.value;
  if (chamber === undefined) return null;
  const state = chamberState(chamber, nowMs, zone.value);
  return (
    <li class="row wall-row" data-urgency={state.urgency} data-priority={state.alarm?.priority}>
      <Folio batch={chamber.batch} />
      <div class="who">
        <h2>{chamber.name}</h2>
        <p class="stage">{stageLine(chamber)}</p>
      </div>
      <ClimateFigures chamber={chamber} nowMs={nowMs} />
      <div class="say">
        <StateSentence state={state} />
        {state.asked === null && <NextDue chamber={chamber} nowMs={nowMs} zone={zone.value} />}
      </div>
    </li>
  );
}

export function WallList({ ids }: { readonly ids: readonly string[] }) {
  return (
    <ul class="wall-list">
      {ids.map((id) => (
        <WallRow key={id} id={id} />
      ))}
    </ul>
  );
}
