// Where the climate of a chamber is heading, from its last minutes: the slope of the straight line that fits them best (least squares).
import { median } from '../readings/median.ts';

export interface MinuteValue {
  readonly minute: number;
  readonly value: number;
}

const FEWEST = 5;

/** Change a minute of one probe; null with fewer than five minutes heard. */
export function slopeOf(points: readonly MinuteValue[]): number | null {
  if (points.length < FEWEST) return null;
  const meanMinute = points.reduce((sum, { minute }) => sum + minute, 0) / points.length;
  const meanValue = points.reduce((sum, { value }) => sum + value, 0) / points.length;
  const spread = points.reduce((sum, { minute }) => sum + (minute - meanMinute) ** 2, 0);
  if (spread === 0) return null;
  return points.reduce((sum, { minute, value }) => sum + (minute - meanMinute) * (value - meanValue), 0) / spread;
}

/** The slope in the middle of those of all probes, so that one of them alone does not speak for the chamber; null when none is known. */
export function chamberTrend(probes: readonly (readonly MinuteValue[])[]): number | null {
  return median(probes.map(slopeOf).filter((slope) => slope !== null));
}
