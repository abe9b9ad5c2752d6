// The next step of the opening, while venting is near or under way: what to open to and why, or why nothing is proposed; whether scions stand.
// It is worked out from the air alone and never opens anything: a person does, and says so.
import type { ComponentChildren } from 'preact';
import type { VentingView } from '../../shared/api/venting.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { slowNowMs } from '../clock.ts';
import { changes } from '../live.ts';
import { ActButton } from '../parts/act-button.tsx';
import { useLoad } from '../parts/use-load.ts';
import { humidityLimitText } from '../quantities.ts';
import { mayAct, zone } from '../session.ts';
import { words } from '../strings.ts';
import { clockTime, dayAndTime } from '../when.ts';
import { OpeningBasis } from './opening-basis.tsx';
import { isVentingShown, stepWords } from './venting-words.ts';

interface Props {
  readonly batchId: string;
  readonly onLogged: () => void;
}

interface PartProps extends Props {
  readonly view: VentingView;
}

/** Asked for anew this often while nothing else happens: the air moves. */
const ASK_MS = 2 * MINUTE_MS;

function useTime(): (at: string) => string {
  const nowMs = slowNowMs.value;
  const siteZone = zone.value;
  return (at) => dayAndTime(Date.parse(at), nowMs, siteZone);
}

async function logGap(batchId: string, gapPercent: number): Promise<void> {
  await calls.log(batchId, { kind: 'gap', gapPercent });
  showNote(words.venting.logged(gapPercent, clockTime(slowNowMs.peek(), zone.peek())));
}

function GapButton({ batchId, percent, onLogged, children }: Props & { percent: number; children: ComponentChildren }) {
  return (
    <ActButton kind="main" work={() => logGap(batchId, percent)} onDone={onLogged}>
      {children}
    </ActButton>
  );
}

function Limp({ batchId, view, onLogged }: PartProps) {
  if (view.limp === null) return null;
  const { acts, backToPercent } = view.limp;
  return (
    <div class="first-aid" role="alert">
      <p>{acts.length === 0 ? words.venting.limpDone : view.reason}</p>
      {mayAct.value && acts.length > 0 && (
        <div class="acts">
          {acts.includes('close') && (
            <GapButton batchId={batchId} percent={backToPercent} onLogged={onLogged}>
              {words.venting.closeTo(backToPercent)}
            </GapButton>
          )}
          {acts.includes('mist') && (
            <ActButton work={() => calls.log(batchId, { kind: 'mist' })} done={words.logKinds.mist} onDone={onLogged}>
              {words.venting.misted}
            </ActButton>
          )}
          {acts.includes('hold') && (
            <ActButton
              work={() => calls.hold(batchId, words.venting.holdReason)}
              done={words.batch.held}
              onDone={onLogged}
            >
              {words.venting.hold}
            </ActButton>
          )}
        </div>
      )}
    </div>
  );
}

function AskErect({ batchId, view, onLogged }: PartProps) {
  const time = useTime();
  if (view.askErect === null) return null;
  const { gapPercent, since } = view.askErect;
  const question = words.venting.askErect(gapPercent, time(since));
  return (
    <div>
      <p>{question}</p>
      {mayAct.value && (
        <div class="acts">
          {(['erect', 'limp'] as const).map((kind) => (
            <ActButton
              key={kind}
              work={() => calls.log(batchId, { kind })}
              done={words.logKinds[kind]}
              onDone={onLogged}
              label={words.venting.answerFor(words.venting[kind], gapPercent)}
            >
              {words.venting[kind]}
            </ActButton>
          ))}
        </div>
      )}
    </div>
  );
}

function Proposal({ batchId, view, onLogged }: PartProps) {
  const time = useTime();
  const { proposal, step } = view;
  const plan = step === null ? null : stepWords(step, Date.parse(view.at), time);
  if (proposal === null) {
    return (
      <>
        {view.limp === null && <p>{words.venting.none(view.reason)}</p>}
        {plan !== null && <p class="details">{plan}</p>}
      </>
    );
  }
  return (
    <>
      <p class="sentence">{view.reason}</p>
      <p class="details">
        {plan} {words.venting.pace(humidityLimitText(proposal.dryingRatePerHour))} {words.venting.asOf(time(view.at))}{' '}
        {words.venting.caution}
      </p>
      {mayAct.value && (
        <div class="acts">
          <GapButton batchId={batchId} percent={proposal.gapPercent} onLogged={onLogged}>
            {proposal.gapPercent < (view.gapPercent ?? 0)
              ? words.venting.closeTo(proposal.gapPercent)
              : words.venting.opened(proposal.gapPercent)}
          </GapButton>
        </div>
      )}
    </>
  );
}

export function NextOpening({ batchId, onLogged }: Props) {
  const round = Math.floor(slowNowMs.value / ASK_MS);
  const venting = useLoad(() => calls.venting(batchId), `${batchId} ${round}`, [changes.batches]);
  const view = venting.data;
  if (view === undefined || !isVentingShown(view)) return null;
  const logged = () => {
    venting.reload();
    onLogged();
  };
  const parts = { batchId, view, onLogged: logged };
  return (
    <section class="next-opening" aria-labelledby="next-opening">
      <h2 id="next-opening">{words.venting.title}</h2>
      <Limp {...parts} />
      <AskErect {...parts} />
      <Proposal {...parts} />
      <OpeningBasis view={view} />
    </section>
  );
}
