// House air between its readings, and the steps of a window over which it is a straight line. Nothing is drawn across a longer silence.
import { HOUR_MS } from '../units.ts';
import type { RatioPoint } from './humidity-ratio-series.ts';
import type { ExchangeStep, WindowSeries } from './relaxation-model.ts';

/** The joined stretches of a house series may be no further apart than `silenceMs`. Points in order of time. */
export interface HouseLine {
  readonly points: readonly RatioPoint[];
  readonly silenceMs: number;
}

/** A reading of the chamber, with what its air would hold if saturated. */
export interface ChamberPoint extends RatioPoint {
  readonly saturated: number;
}

/**
 * The window's readings with house air laid under them, from the first reading on and as far as house air is known without a longer silence;
 * null when it is not known at the first reading. The drive is what the chamber's air would hold if saturated, less what house air holds.
 */
export function layHouseUnder(readings: readonly ChamberPoint[], house: HouseLine): WindowSeries | null {
  const first = readings[0];
  const last = readings.at(-1);
  if (first === undefined || last === undefined) return null;
  const saturated = readings.map(({ timeMs, saturated }) => ({ timeMs, ratio: saturated }));
  const chamber = { points: saturated, silenceMs: Infinity };
  const indexOf = new Map(readings.map(({ timeMs }, index) => [timeMs, index]));
  const steps: ExchangeStep[] = [];
  let before = instantAt(house, chamber, first.timeMs);
  for (const atMs of before === null ? [] : instants(readings, house, first.timeMs, last.timeMs)) {
    const after = instantAt(house, chamber, atMs);
    if (before === null || after === null) break;
    steps.push({
      hours: (atMs - before.timeMs) / HOUR_MS,
      houseFrom: before.house,
      houseTo: after.house,
      driveFrom: before.drive,
      driveTo: after.drive,
      reading: indexOf.get(atMs) ?? null,
    });
    before = after;
  }
  if (before === null) return null;
  const endMs = before.timeMs;
  return { steps, values: readings.filter(({ timeMs }) => timeMs <= endMs).map(({ ratio }) => ratio) };
}

interface Instant {
  readonly timeMs: number;
  readonly house: number;
  readonly drive: number;
}

function instantAt(house: HouseLine, saturated: HouseLine, timeMs: number): Instant | null {
  const [outside, inside] = [lineAt(house, timeMs), lineAt(saturated, timeMs)];
  return outside === null || inside === null ? null : { timeMs, house: outside, drive: inside - outside };
}

/** The line through the points at an instant; null outside them and within a silence. */
function lineAt({ points, silenceMs }: HouseLine, atMs: number): number | null {
  const index = firstFrom(points, atMs);
  const after = points[index];
  if (after?.timeMs === atMs) return after.ratio;
  const before = points[index - 1];
  if (before === undefined || after === undefined || after.timeMs - before.timeMs > silenceMs) return null;
  return before.ratio + ((after.ratio - before.ratio) * (atMs - before.timeMs)) / (after.timeMs - before.timeMs);
}

/** The times of readings and house readings after `fromMs` up to `toMs`, each once; with one inside every silence, where house air is null. */
function instants(readings: readonly RatioPoint[], house: HouseLine, fromMs: number, toMs: number): number[] {
  const times = new Set(readings.map(({ timeMs }) => timeMs));
  for (let i = firstFrom(house.points, fromMs); i < house.points.length; i++) {
    const [before, point] = [house.points[i - 1], house.points[i]];
    if (point === undefined) break;
    if (before !== undefined && point.timeMs - before.timeMs > house.silenceMs) times.add(point.timeMs - 1);
    if (point.timeMs > toMs) break;
    times.add(point.timeMs);
  }
  return [...times].filter((ms) => ms > fromMs && ms <= toMs).sort((a, b) => a - b);
}

/** Index of the first point at or after an instant. */
function firstFrom(points: readonly RatioPoint[], atMs: number): number {
  let low = 0;
  let high = points.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((points[middle]?.timeMs ?? Infinity) < atMs) low = middle + 1;
    else high = middle;
  }
  return low;
}
