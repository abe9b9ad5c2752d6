// The gap to go to next. It proposes only from a good fit, for the air as it is now, and never what would take the air below the corridor or
// dry it faster than the profile allows. Whether the scions stand it, people see: a proposal is not an order.
import { HOUR_MS, MINUTE_MS } from '../units.ts';
import { chooseGap, type GapCandidate, type GapChoice } from './choose-gap.ts';
import { gapChanges, SENSOR_TOP, type VentLogEntry } from './cut-windows.ts';
import type { ExchangeFit, ExchangeResult } from './fit-exchange.ts';
import { type LimpAnswer, limpAnswer } from './limp-answer.ts';
import { makeRateCurve, type RateCurve } from './rate-curve.ts';
import { type AirNow, balanceAt, type VentAir } from './vent-balance.ts';
import type { Refusal } from './why-not.ts';

/** Everything a proposal rests on. Humidity in %RH. */
export interface VentScene {
  readonly nowMs: number;
  readonly exchange: ExchangeResult;
  readonly chamber: { readonly temperature: number | null; readonly humidity: number | null };
  readonly house: { readonly temperature: number | null; readonly humidity: number | null };
  readonly altitudeM: number;
  readonly log: readonly VentLogEntry[];
  /** The corridor at the next step: what the air should come to. */
  readonly step: { readonly low: number; readonly high: number };
  /** The profile's grace: the fastest it lets humidity fall, %RH an hour. */
  readonly gracePerHour: number;
}

export interface VentProposal {
  readonly gapPercent: number;
  /** The gap it stands at. */
  readonly fromPercent: number;
  /** Where it settles, %RH, and ± for about 95 %. */
  readonly expectedHumidity: number;
  readonly plusMinus: number;
  /** Until it is within 1 %RH of that. */
  readonly settlesInMinutes: number;
  /** The fall in the first hour after opening, %RH: the steepest hour. 0 where humidity rises. */
  readonly dryingRatePerHour: number;
  /** What keeps it short of the step, so that it is a part of the way; null = it settles inside the step's corridor. */
  readonly shortBy: GapChoice['shortBy'];
}

export type VentAnswer =
  | { readonly proposal: VentProposal }
  | ({ readonly proposal: null; readonly limp: LimpAnswer | null } & Refusal);

/** The source changes with sun and plants: a fit whose newest window ended longer ago says nothing of now (ours). */
const LONGEST_AGE_MS = 24 * HOUR_MS;
/** Settling times after which the air is taken as settled: 5 % of the way is left. */
const SETTLING_TIMES = 3;
/** How far beyond its ± a balance may be off what is measured now, %RH (ours). */
const LARGEST_MISMATCH = 5;
/** "Settled" is within this of the balance, %RH: less than a probe can tell. */
const SETTLED_WITHIN = 1;

interface Ready {
  readonly fit: ExchangeFit;
  readonly curve: RateCurve;
  readonly air: VentAir;
}

/** The gap that takes the chamber to the step, or why none is proposed. Never throws. */
export function proposeVent(scene: VentScene): VentAnswer {
  const limp = limpAnswer(scene.log);
  if (limp !== null) return { proposal: null, limp, why: 'limp', ...limp };
  const ready = makeReady(scene);
  if ('why' in ready) return refuse(ready);
  const standing = judgeStanding(scene, ready);
  if (standing !== null) return refuse(standing);
  const choice = chooseGap(candidates(ready), { ...scene, air: ready.air });
  return 'why' in choice ? refuse(choice) : { proposal: propose(choice, ready.air) };
}

function makeReady({ exchange, chamber, house, altitudeM, log, nowMs }: VentScene): Ready | Refusal {
  if (exchange.fit === null) return exchange;
  const { fit } = exchange;
  if (nowMs - fit.source.toMs > LONGEST_AGE_MS) return { why: 'fit-too-old' };
  const [inside, outside] = [bothHalves(chamber), bothHalves(house)];
  if (inside === null || outside === null) {
    return { why: 'no-air-now', place: inside === null ? 'chamber' : 'house' };
  }
  const curve = makeRateCurve(fit.levels);
  if (curve === null) return { why: 'not-monotone' };
  const gapPercent = gapChanges(log).at(-1)?.gapPercent ?? 0;
  return { fit, curve, air: { chamber: inside, house: outside, altitudeM, gapPercent } };
}

/** What the present gap and air say: wait, leave it, or distrust the fit; null = go on. */
function judgeStanding({ log, nowMs, step }: VentScene, { fit, curve, air }: Ready): Refusal | null {
  const { humidity } = air.chamber;
  const balance = balanceAt(fit, curve, air, air.gapPercent);
  const sinceMs = nowMs - (gapChanges(log).at(-1)?.atMs ?? -Infinity);
  const settledMs = balance === null ? 0 : (SETTLING_TIMES / balance.ratePerHour) * HOUR_MS;
  if (sinceMs < settledMs) return { why: 'still-settling', minutes: Math.ceil((settledMs - sinceMs) / MINUTE_MS) };
  if (humidity >= step.low && humidity <= step.high) return { why: 'already-there' };
  if (balance === null || humidity >= SENSOR_TOP) return null;
  const isOff = Math.abs(balance.humidity - humidity) > balance.plusMinus + LARGEST_MISMATCH;
  return isOff ? { why: 'does-not-match', expected: balance.humidity, measured: humidity } : null;
}

/** The balance at every whole per cent of gap the curve answers for, narrowest first. */
function candidates({ fit, curve, air }: Ready): GapCandidate[] {
  const first = Math.ceil(curve.fromPercent);
  const gaps = Array.from({ length: Math.floor(curve.toPercent) - first + 1 }, (_, i) => first + i);
  return gaps.flatMap((gapPercent) => {
    const balance = balanceAt(fit, curve, air, gapPercent);
    return balance === null ? [] : { ...balance, gapPercent };
  });
}

function propose({ candidate, dryingRatePerHour, shortBy }: GapChoice, air: VentAir): VentProposal {
  const { gapPercent, humidity, plusMinus, ratePerHour } = candidate;
  const left = Math.abs(air.chamber.humidity - humidity);
  return {
    gapPercent,
    fromPercent: air.gapPercent,
    expectedHumidity: humidity,
    plusMinus,
    settlesInMinutes: left <= SETTLED_WITHIN ? 0 : (60 * Math.log(left / SETTLED_WITHIN)) / ratePerHour,
    dryingRatePerHour,
    shortBy,
  };
}

function bothHalves({ temperature, humidity }: VentScene['chamber']): AirNow | null {
  return temperature === null || humidity === null ? null : { temperature, humidity };
}

function refuse(refusal: Refusal): VentAnswer {
  return { ...refusal, proposal: null, limp: null };
}
