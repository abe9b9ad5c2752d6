// The head of a chamber's page: day, state with all that can be done about it, what is due next, and the climate now.
import type { ChamberView } from '../../shared/api/chambers.ts';
import { chamberState } from '../chamber-state.ts';
import { slowNowMs } from '../clock.ts';
import { dryAheadWords } from '../dry-ahead-words.ts';
import { AirCertainty } from '../parts/air-certainty.tsx';
import { AlarmActs } from '../parts/alarm-acts.tsx';
import { AlarmDetails } from '../parts/alarm-details.tsx';
import { ClimateFigures } from '../parts/climate-figures.tsx';
import { DisturbedAir } from '../parts/disturbed-air.tsx';
import { FirstAidNote } from '../parts/first-aid-note.tsx';
import { Folio } from '../parts/folio.tsx';
import { NextDue } from '../parts/next-due.tsx';
import { OutOfServiceNote } from '../parts/out-of-service-note.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { StateSentence } from '../parts/state-sentence.tsx';
import { temperatureText, withHumidity, withTemperature } from '../quantities.ts';
import { zone } from '../session.ts';
import { words } from '../strings.ts';
import { batchLine, stageLine } from './chamber-row.tsx';

function AirLine({ chamber }: { readonly chamber: ChamberView }) {
  const { climate, house } = chamber;
  return (
    <p class="air">
      <span>{words.chamber.probes(climate.healthyProbes, climate.canopyProbes)}</span>
      {climate.healthyProbes > 1 && climate.hottest !== null && (
        <span>
          {words.chamber.spread(
            temperatureText(climate.coldest),
            withTemperature(climate.hottest),
            withHumidity(climate.driest),
          )}
        </span>
      )}
      {(house.temperature !== null || house.humidity !== null) && (
        <span>{words.chamber.house(withTemperature(house.temperature), withHumidity(house.humidity))}</span>
      )}
    </p>
  );
}

export function ChamberHead({ chamber }: { readonly chamber: ChamberView }) {
  const nowMs = slowNowMs.value;
  const state = chamberState(chamber, nowMs, zone.value);
  const dryAhead = dryAheadWords(chamber.dryAhead, zone.value);
  return (
    <div class="chamber-head" data-urgency={state.urgency} data-priority={state.alarm?.priority}>
      <Folio batch={chamber.batch} />
      <div class="who">
        <PageHead title={chamber.name} />
        <p>{batchLine(chamber)}</p>
        <p class="stage">{stageLine(chamber)}</p>
      </div>
      <div class="say">
        <StateSentence state={state} />
        {state.alarm !== null && <AlarmDetails alarm={state.alarm} nowMs={nowMs} zone={zone.value} />}
        {state.advice !== '' && <p class="advice">{state.advice}</p>}
        {state.alarm !== null && <AlarmActs key={state.alarm.id} alarm={state.alarm} />}
        <DisturbedAir chamber={chamber} nowMs={nowMs} />
        <OutOfServiceNote chamber={chamber} />
        {state.asked === null && <NextDue chamber={chamber} nowMs={nowMs} zone={zone.value} />}
        {chamber.batch !== null && <FirstAidNote batchId={chamber.batch.id} said={state.advice} />}
      </div>
      <div class="climate-now">
        <ClimateFigures chamber={chamber} nowMs={nowMs} />
        <AirLine chamber={chamber} />
        <AirCertainty climate={chamber.climate} />
        {dryAhead !== null && <p class="air">{dryAhead}</p>}
      </div>
    </div>
  );
}
