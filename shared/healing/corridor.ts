// The corridor: the limits of temperature and humidity at an instant, from profile, stages and house air. It holds no number of its own.
import { type BatchTimes, planStages, type StageSpan } from './batch-clock.ts';
import { limitPieces, type Piece, type ResolveEnd } from './limit-course.ts';
import type { LimitEnd, LimitSet, ProfileDocument, StagePlan } from './profile.ts';
import { type LimitCourse, slowTightening } from './slow-tightening.ts';

/** Limits of one quantity; always lowLow ≤ low ≤ high ≤ highHigh. A humidity `high` of 100 watches nothing: air cannot be wetter. */
export interface Band {
  readonly lowLow: number | null;
  readonly low: number;
  readonly high: number;
  readonly highHigh: number | null;
}

export interface Corridor {
  readonly temperature: Band;
  readonly humidity: Band;
}

/** Running day means of the house probe, °C and %RH; null = not known, then the profile's fallback numbers are used. */
export interface HouseAir {
  readonly temperature: number | null;
  readonly humidity: number | null;
}

type Quantity = 'temperature' | 'humidity';

/** A band over time, and until when it stays what it is, as in `LimitCourse`. */
interface BandCourse {
  readonly bandAt: (atMs: number) => Band | null;
  readonly steadyUntilMs: (atMs: number) => number;
}

/**
 * The corridor over all stages, worked out once; the returned function is cheap to call for any instant, in any order, and gives null
 * outside the stages. Tightening is slowed to the profile's grace, also across borders and steps; loosening is immediate: a limit jumps only
 * where a step or border loosens it. `closed` always follows loading, so its grace starts from the loading limits even when the opening is
 * not known. Where house air makes low and high cross they change places, so that the corridor is never empty; only then may a limit
 * tighten faster. House air is taken as one value for the whole plan. While no limit moves, instants in a row get the same object.
 */
export function makeCorridor(
  document: ProfileDocument,
  spans: readonly StageSpan[],
  house: HouseAir,
): (atMs: number) => Corridor | null {
  const temperature = makeBand(document, spans, 'temperature', house, document.grace.temperaturePerHour);
  const humidity = makeBand(document, spans, 'humidity', house, document.grace.humidityPerHour);
  const startMs = spans[0]?.startMs ?? Infinity;
  const workOut = (atMs: number): Corridor | null => {
    const [temperatureNow, humidityNow] = [temperature.bandAt(atMs), humidity.bandAt(atMs)];
    return temperatureNow === null || humidityNow === null
      ? null
      : { temperature: temperatureNow, humidity: humidityNow };
  };
  let steady: { readonly corridor: Corridor | null; readonly fromMs: number; readonly untilMs: number } | null = null;
  return (atMs) => {
    if (atMs < startMs) return null;
    if (steady !== null && (atMs === steady.fromMs || (atMs > steady.fromMs && atMs < steady.untilMs)))
      return steady.corridor;
    const untilMs = earliest(atMs, temperature, humidity);
    steady = { corridor: workOut(atMs), fromMs: atMs, untilMs };
    return steady.corridor;
  };
}

/** The corridor at one instant, as the plan stands then. For many instants use `makeCorridor`. */
export function corridorAt(
  document: ProfileDocument,
  times: BatchTimes,
  atMs: number,
  house: HouseAir,
): Corridor | null {
  return makeCorridor(document, planStages(document, times, atMs), house)(atMs);
}

function makeBand(
  document: ProfileDocument,
  spans: readonly StageSpan[],
  quantity: Quantity,
  house: HouseAir,
  ratePerHour: number,
): BandCourse {
  const resolve = endResolver(quantity, house[quantity]);
  const course = (name: keyof LimitSet, side: 'low' | 'high'): LimitCourse =>
    slowTightening(coursePieces(document, spans, quantity, name, resolve), side, ratePerHour);
  const lowLow = course('lowLow', 'low');
  const low = course('low', 'low');
  const high = course('high', 'high');
  const highHigh = course('highHigh', 'high');
  return {
    bandAt: (atMs) => orderBand(lowLow.valueAt(atMs), low.valueAt(atMs), high.valueAt(atMs), highHigh.valueAt(atMs)),
    steadyUntilMs: (atMs) => earliest(atMs, low, high, lowLow, highHigh),
  };
}

/** Until when all of them are steady. */
function earliest(atMs: number, ...courses: readonly Pick<LimitCourse, 'steadyUntilMs'>[]): number {
  let untilMs = Infinity;
  for (const course of courses) {
    untilMs = Math.min(untilMs, course.steadyUntilMs(atMs));
    if (untilMs <= atMs) break;
  }
  return untilMs;
}

function coursePieces(
  document: ProfileDocument,
  spans: readonly StageSpan[],
  quantity: Quantity,
  name: keyof LimitSet,
  resolve: ResolveEnd,
): Piece[] {
  const planOf = new Map(document.stages.map((plan): [string, StagePlan] => [plan.stage, plan]));
  return spansWithLoading(spans).flatMap((span) => {
    const limit = planOf.get(span.stage)?.[quantity][name];
    return limit === undefined ? [] : limitPieces(limit, span, resolve);
  });
}

/** A loading of one millisecond before a `closed` that has none: it lends its limits to the grace. */
function spansWithLoading(spans: readonly StageSpan[]): readonly StageSpan[] {
  const first = spans[0];
  if (first?.stage !== 'closed') return spans;
  return [{ stage: 'loading', startMs: first.startMs - 1, endMs: first.startMs }, ...spans];
}

function endResolver(quantity: Quantity, house: number | null): ResolveEnd {
  return (end: LimitEnd) => {
    if (typeof end === 'number') return end;
    if (house === null) return end.fallback;
    const value = house + end.houseOffset;
    return quantity === 'humidity' ? Math.min(100, Math.max(0, value)) : value;
  };
}

function orderBand(
  lowLow: number | null,
  low: number | null,
  high: number | null,
  highHigh: number | null,
): Band | null {
  if (low === null || high === null) return null;
  const inner = { low: Math.min(low, high), high: Math.max(low, high) };
  return {
    lowLow: lowLow === null ? null : Math.min(lowLow, inner.low),
    ...inner,
    highHigh: highHigh === null ? null : Math.max(highHigh, inner.high),
  };
}
