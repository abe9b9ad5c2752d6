// The next step of the opening as it is sent to people: what to open to and what it rests on, or why nothing is proposed.
import type { VentingView } from '../../shared/api/venting.ts';
import type { Batch } from '../../shared/healing/batch.ts';
import { stageAt } from '../../shared/healing/batch-clock.ts';
import { HOUR_MS, utcText } from '../../shared/units.ts';
import { gapChanges, type VentLogEntry } from '../../shared/venting/cut-windows.ts';
import { type CorridorStep, findStep } from '../../shared/venting/find-step.ts';
import { limpAnswer } from '../../shared/venting/limp-answer.ts';
import { proposeVent, type VentAnswer, type VentProposal } from '../../shared/venting/propose-vent.ts';
import { sayNoOpening, sayProposal } from '../../shared/venting/say-venting.ts';
import type { NoOpening } from '../../shared/venting/why-not.ts';
import type { SharedWords } from '../../shared/words/shared-words.ts';
import type { Clock } from '../clock.ts';
import type { Site } from '../site.ts';
import type { LogRow, Store } from '../store/store.ts';
import { createExchangeBook, type FittedExchange } from '../venting/exchange-book.ts';
import { houseClimate } from '../watch/house-air.ts';
import type { Watch } from '../watch/watch.ts';
import { type BatchPlan, type HealingNow, loadHealing, planBatch } from '../watch/watched-chamber.ts';
import { rounded } from './rounded.ts';
import { viewFit } from './vent-fit-view.ts';

interface VentingParts {
  readonly store: Store;
  readonly watch: Watch;
  readonly site: Site;
  readonly clock: Clock;
}

/** From when before venting people get ready for it (ours). */
const NEAR_MS = 12 * HOUR_MS;
/** A proposal rests on the air as it is: for a step further ahead than this it would not hold (ours). */
const AHEAD_MS = HOUR_MS;

/** Makes the view of any batch; it keeps the fits between calls. */
export function createVentingView(parts: VentingParts): (batch: Batch, words: SharedWords) => Promise<VentingView> {
  const book = createExchangeBook(parts.store);
  return async (batch, words) => {
    const nowMs = parts.clock.nowMs();
    const { zone, altitudeM } = parts.site.current();
    const healing = await loadHealing(parts.store, batch);
    const plan = planBatch(healing, zone, parts.watch.house(), batch.finishedMs ?? nowMs);
    const log = ventLog(await parts.store.batches.log(batch.id), batch);
    const phase = phaseAt(plan, batch, nowMs);
    const isFitted = phase === 'near' || phase === 'under-way';
    const fitted = isFitted ? await book.fitOf(batch, log, { altitudeM, nowMs }) : null;
    return describe({ parts, words, nowMs, altitudeM, batch, healing, plan, log, phase, fitted });
  };
}

/** Closing closes the gap: how far the tent stood open while it was being loaded says nothing of it since. */
function ventLog(rows: readonly LogRow[], { closedMs }: Batch): VentLogEntry[] {
  return rows
    .filter(({ kind, atMs }) => kind !== 'gap' || atMs >= (closedMs ?? 0))
    .map(({ atMs, kind, gapPercent }) => ({ atMs, kind, gapPercent }));
}

interface Seen {
  readonly parts: VentingParts;
  readonly words: SharedWords;
  readonly nowMs: number;
  readonly altitudeM: number;
  readonly batch: Batch;
  readonly healing: HealingNow;
  readonly plan: BatchPlan;
  readonly log: readonly VentLogEntry[];
  readonly phase: VentingView['phase'];
  readonly fitted: FittedExchange | null;
}

type Answer = Pick<VentingView, 'proposal' | 'why' | 'reason'>;

function describe(seen: Seen): VentingView {
  const { batch, log, nowMs, phase, fitted } = seen;
  const air = airNow(seen);
  const step = phase === 'over' || air.chamber.humidity === null ? null : nextStep(seen, air.chamber.humidity);
  return {
    batchId: batch.id,
    at: utcText(nowMs),
    phase,
    gapPercent: gapChanges(log).at(-1)?.gapPercent ?? null,
    step: step === null ? null : viewStep(step),
    ...answer(seen, air, step),
    limp: viewLimp(seen),
    askErect: batch.finishedMs === null ? unansweredStep(log) : null,
    ...viewFit(fitted, seen.words),
  };
}

function viewLimp({ batch, log }: Seen): VentingView['limp'] {
  const limp = batch.finishedMs === null ? limpAnswer(log) : null;
  if (limp === null) return null;
  const { sinceMs, acts, backToPercent } = limp;
  return { since: utcText(sinceMs), acts: acts.filter((act) => act !== 'hold' || !isOnHold(batch)), backToPercent };
}

function isOnHold(batch: Batch): boolean {
  return batch.holds.some(({ toMs }) => toMs === null);
}

function phaseAt(plan: BatchPlan, batch: Batch, nowMs: number): VentingView['phase'] {
  if (batch.finishedMs !== null) return 'over';
  const stage = stageAt(plan.spans, nowMs)?.stage;
  if (stage === 'venting') return 'under-way';
  if (stage === undefined || stage === 'hardening') return 'over';
  const ventingMs = plan.spans.find((span) => span.stage === 'venting')?.startMs ?? Infinity;
  return nowMs >= ventingMs - NEAR_MS ? 'near' : 'before';
}

type AirHalves = { readonly temperature: number | null; readonly humidity: number | null };

function airNow({ parts, batch, nowMs, altitudeM }: Seen): { chamber: AirHalves; house: AirHalves } {
  const { watch } = parts;
  const chamber = watch.chamber(batch.chamberId);
  const climate = chamber === undefined ? null : watch.scene(chamber, watch.probes.all(), nowMs).climate;
  return {
    chamber: { temperature: climate?.temperature ?? null, humidity: climate?.humidity ?? null },
    house: houseClimate(watch.probes.inHouse(), nowMs, altitudeM),
  };
}

/** The step to come to; air below the low limit has to come back into the band of now first. */
function nextStep({ plan, nowMs }: Seen, humidity: number): CorridorStep | null {
  const band = plan.corridorAt(nowMs)?.humidity;
  if (band !== undefined && humidity < band.low) return { low: band.low, high: band.high, fromMs: nowMs };
  const untilMs = plan.spans.at(-1)?.endMs ?? nowMs;
  return findStep((atMs) => plan.corridorAt(atMs)?.humidity ?? null, humidity, nowMs, untilMs);
}

function answer(seen: Seen, air: ReturnType<typeof airNow>, step: CorridorStep | null): Answer {
  const vent = decide(seen, air, step);
  if ('proposal' in vent && vent.proposal !== null) {
    const { proposal } = vent;
    return { proposal: viewProposal(proposal), why: null, reason: sayProposal(proposal, seen.words) };
  }
  return { proposal: null, why: vent.why, reason: sayNoOpening(vent, seen.words) };
}

function decide(seen: Seen, air: ReturnType<typeof airNow>, step: CorridorStep | null): VentAnswer | NoOpening {
  const { batch, phase, fitted, nowMs, log, altitudeM, healing } = seen;
  if (phase === 'over') return { why: 'over' };
  const limp = limpAnswer(log);
  if (limp !== null) return { why: 'limp', ...limp };
  if (isOnHold(batch)) return { why: 'on-hold' };
  if (phase === 'before' || fitted === null) return { why: 'not-yet', isFarOff: true, unknown: null };
  if (air.chamber.humidity === null) return { why: 'no-air-now', place: 'chamber' };
  if (step === null) return { why: 'no-step' };
  const { result } = fitted;
  if (step.fromMs > nowMs + AHEAD_MS)
    return { why: 'not-yet', isFarOff: false, unknown: result.fit === null ? result : null };
  const gracePerHour = healing.document.grace.humidityPerHour;
  return proposeVent({ ...air, nowMs, exchange: result, altitudeM, log, step, gracePerHour });
}

/** The newest change, if it opened the gap and nobody has said since how the scions stand. */
function unansweredStep(log: readonly VentLogEntry[]): VentingView['askErect'] {
  const changes = gapChanges(log);
  const [before, last] = [changes.at(-2), changes.at(-1)];
  if (last === undefined || last.gapPercent <= (before?.gapPercent ?? 0)) return null;
  const isSaid = log.some(({ kind, atMs }) => (kind === 'limp' || kind === 'erect') && atMs >= last.atMs);
  return isSaid ? null : { gapPercent: last.gapPercent, since: utcText(last.atMs) };
}

function viewStep({ low, high, fromMs }: CorridorStep): VentingView['step'] {
  return { low: tenths(low), high: tenths(high), opensAt: utcText(Math.round(fromMs)) };
}

function viewProposal(proposal: VentProposal): VentingView['proposal'] {
  return {
    ...proposal,
    expectedHumidity: tenths(proposal.expectedHumidity),
    plusMinus: tenths(proposal.plusMinus),
    settlesInMinutes: Math.round(proposal.settlesInMinutes),
    dryingRatePerHour: tenths(proposal.dryingRatePerHour),
  };
}

function tenths(value: number): number {
  return rounded(value, 1) ?? 0;
}
