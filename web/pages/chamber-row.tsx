// One chamber on the overview: a line of the ledger with its day, state, figures, what to do, and its strip.
import type { ChamberView } from '../../shared/api/chambers.ts';
import { type ChamberState, chamberState } from '../chamber-state.ts';
import { chamberSignal } from '../chamber-store.ts';
import { slowNowMs } from '../clock.ts';
import { AcknowledgeButton } from '../parts/alarm-acts.tsx';
import { AlarmDetails } from '../parts/alarm-details.tsx';
import { CheckAnswer } from '../parts/check-answer.tsx';
import { ClimateFigures } from '../parts/climate-figures.tsx';
import { DisturbedAir } from '../parts/disturbed-air.tsx';
import { FirstAidNote } from '../parts/first-aid-note.tsx';
import { Folio } from '../parts/folio.tsx';
import { NextDue } from '../parts/next-due.tsx';
import { OutOfServiceNote } from '../parts/out-of-service-note.tsx';
import { StateSentence } from '../parts/state-sentence.tsx';
import { chamberPath } from '../router.ts';
import { mayAct, zone } from '../session.ts';
import { words } from '../strings.ts';
import { HealingStrip } from '../strip/healing-strip.tsx';

/** The batch in one line: code, graft, trays. */
export function batchLine(chamber: ChamberView): string {
  const { batch } = chamber;
  if (batch === null) return words.overview.noBatch;
  const graft =
    batch.scion === '' && batch.rootstock === '' ? [] : [words.overview.graft(batch.scion, batch.rootstock)];
  const trays = batch.trays === 0 ? [] : [words.overview.trays(batch.trays)];
  return [batch.code, ...graft, ...trays].join(' · ');
}

/** Stage, hold and gap in one line. */
export function stageLine(chamber: ChamberView): string {
  const { batch } = chamber;
  if (batch === null || batch.stage === null) return '';
  const gap = batch.gapPercent === null ? [] : [words.overview.gap(batch.gapPercent)];
  const hold = batch.onHold ? [words.overview.onHold] : [];
  return [words.stages[batch.stage], ...hold, ...gap].join(' · ');
}

function Say({
  chamber,
  state,
  nowMs,
}: {
  readonly chamber: ChamberView;
  readonly state: ChamberState;
  readonly nowMs: number;
}) {
  const others = chamber.alarms.length - 1;
  const { alarm, asked } = state;
  const { batch } = chamber;
  return (
    <div class="say">
      <StateSentence state={state} />
      {alarm !== null && <AlarmDetails alarm={alarm} nowMs={nowMs} zone={zone.value} />}
      <div class="do">
        {state.advice !== '' && <p class="advice">{state.advice}</p>}
        {alarm !== null && <AcknowledgeButton alarm={alarm} />}
      </div>
      {batch !== null && asked !== null && mayAct.value && <CheckAnswer batchId={batch.id} check={asked} />}
      {batch !== null && <FirstAidNote batchId={batch.id} said={state.advice} />}
      <DisturbedAir chamber={chamber} nowMs={nowMs} />
      <OutOfServiceNote chamber={chamber} />
      {others > 0 && alarm !== null && (
        <p class="more-alarms">
          <a href={chamberPath(chamber.id)}>{words.state.more(others)}</a>
        </p>
      )}
      {asked === null && <NextDue chamber={chamber} nowMs={nowMs} zone={zone.value} />}
    </div>
  );
}

export function ChamberRow({ id, isShort }: { readonly id: string; readonly isShort: boolean }) {
  const chamber = chamberSignal(id).value;
  const nowMs = slowNowMs.value;
  if (chamber === undefined) return null;
  const state = chamberState(chamber, nowMs, zone.value);
  const title = `row-${id}`;
  const Heading = isShort ? 'h3' : 'h2';
  return (
    <article
      class={isShort ? 'row is-short' : 'row'}
      data-urgency={state.urgency}
      data-priority={state.alarm?.priority}
      aria-labelledby={title}
    >
      <Folio batch={chamber.batch} />
      <div class="who">
        <Heading class="name">
          <a href={chamberPath(id)} id={title}>
            {chamber.name}
          </a>
        </Heading>
        <p>{batchLine(chamber)}</p>
        <p class="stage">{stageLine(chamber)}</p>
        <ClimateFigures chamber={chamber} nowMs={nowMs} />
      </div>
      <Say chamber={chamber} state={state} nowMs={nowMs} />
      <HealingStrip chamber={chamber} />
    </article>
  );
}
