// What the crew of the invented nursery does with a tent: fog, shade, gap and bottom heat. Decides only; it never turns a valve.
import { firstTimeOfDayAtOrAfter } from '../../shared/healing/time-of-day.ts';
import { HOUR_MS, MINUTE_MS } from '../../shared/units.ts';
import { VENTING_HOURS, ventingGapAt } from './venting-gaps.ts';

/** `overheat`: from `fromMs` the sky is clear, the shade stays open and the fogger stands still, until somebody sees to it. */
export type Scenario =
  | { readonly kind: 'steady' }
  | { readonly kind: 'overheat'; readonly fromMs: number; readonly rescueMs: number | null };

export interface CrewPlan {
  readonly closedMs: number;
  readonly ventingMs: number;
  readonly hardeningMs: number;
}

interface CrewView {
  readonly timeMs: number;
  /** Of the tent's air, %RH. */
  readonly humidity: number;
  /** Of the tent's air, °C. */
  readonly temperature: number;
}

export interface CrewAct {
  readonly foggerOn: boolean;
  readonly gapPercent: number;
  /** Share of the sun that the screen keeps off, 0–1. */
  readonly shade: number;
  readonly benchHeatWm2: number;
  /** The scenario asks for a clear sky. */
  readonly clearSky: boolean;
}

/** Venting begins on the first 07:00 after four full days, hardening two days later. */
export function planCrew(closedMs: number, zone: string): CrewPlan {
  const ventingMs = firstTimeOfDayAtOrAfter(closedMs + 96 * HOUR_MS, '07:00', zone);
  return { closedMs, ventingMs, hardeningMs: ventingMs + VENTING_HOURS * HOUR_MS };
}

/** The crew's settings at an instant. `before` is their last act (the fogger switches with a dead band). */
export function decideCrewAct(plan: CrewPlan, scenario: Scenario, view: CrewView, before: CrewAct | null): CrewAct {
  const usual = {
    foggerOn: decideFogger(plan, view, before?.foggerOn ?? false),
    gapPercent: decideGap(plan, view.timeMs),
    shade: decideShade(plan, view.timeMs),
    benchHeatWm2: decideBenchHeat(view.temperature),
    clearSky: false,
  };
  return scenario.kind === 'steady' ? usual : overrideForHeat(usual, scenario, view.timeMs);
}

/** How far the crew opens a tent that is too hot, and how long it stays shaded and open. */
export const RESCUE_GAP_PERCENT = 35;
export const RESCUE_MS = 40 * MINUTE_MS;

function overrideForHeat(usual: CrewAct, scenario: Scenario & { kind: 'overheat' }, timeMs: number): CrewAct {
  if (timeMs < scenario.fromMs) return usual;
  if (scenario.rescueMs === null || timeMs < scenario.rescueMs) {
    return { ...usual, foggerOn: false, shade: 0, clearSky: true };
  }
  if (timeMs >= scenario.rescueMs + RESCUE_MS) return usual;
  return { ...usual, foggerOn: true, shade: 0.85, gapPercent: Math.max(usual.gapPercent, RESCUE_GAP_PERCENT) };
}

/** Ours: on below 95.5 %RH, off above 97.5; off for good half a day before venting, so that the floor can dry. */
function decideFogger(plan: CrewPlan, view: CrewView, wasOn: boolean): boolean {
  if (view.timeMs >= plan.ventingMs - 12 * HOUR_MS) return false;
  const [on, off] = view.timeMs < plan.closedMs ? [84, 88] : [95.5, 97.5];
  return view.humidity < on || (wasOn && view.humidity < off);
}

/** A third open while it is loaded; a look through a small gap on the fourth day; then the stairs. */
function decideGap(plan: CrewPlan, timeMs: number): number {
  if (timeMs < plan.closedMs) return 30;
  const sinceLookMs = timeMs - (plan.ventingMs - LOOK_BEFORE_VENTING_MS);
  return sinceLookMs >= 0 && sinceLookMs < LOOK_MS ? LOOK_GAP_PERCENT : ventingGapAt(timeMs, plan.ventingMs);
}

/** 08:15 on the day before venting, for a quarter of an hour. */
export const LOOK_BEFORE_VENTING_MS = 22.75 * HOUR_MS;
export const LOOK_GAP_PERCENT = 10;
export const LOOK_MS = 15 * MINUTE_MS;

/** Ours: 88 % while the tent is loaded, 80 % while it is closed, 75 % while it is vented, thinner day by day when the plants are hardened. */
function decideShade(plan: CrewPlan, timeMs: number): number {
  if (timeMs < plan.closedMs) return 0.88;
  if (timeMs < plan.ventingMs) return 0.8;
  if (timeMs < plan.hardeningMs) return 0.75;
  return timeMs < plan.hardeningMs + 24 * HOUR_MS ? 0.7 : 0.55;
}

/** A thermostat among the plants: 22 °C with a band of 2 K, 150 W/m² at most. */
function decideBenchHeat(temperature: number): number {
  return Math.min(150, Math.max(0, 75 * (22 - temperature)));
}
