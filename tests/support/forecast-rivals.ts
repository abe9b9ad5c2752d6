// The two plain forecasts that ours has to beat, put into the same replay: the last value held, and a straight line through 15 minutes.
import type { HeatAhead } from '../../shared/forecast/heat-ahead.ts';
import { QUIET_MS } from '../../shared/forecast/judge-warnings.ts';
import type { Measurement } from '../../shared/forecast/local-linear-trend.ts';
import type { HeatForecaster } from '../../shared/replay/heat-forecaster.ts';
import { MINUTE_MS } from '../../shared/units.ts';

/** The line is drawn through the readings of so long. */
export const LINE_MS = 15 * MINUTE_MS;

/** The last value stays as it is; a margin warns so many degrees below the limit (0 = the forecast itself, which never comes early). */
export function lastValueHeld(marginDegrees: number): HeatForecaster {
  return rival((recent, high) => (recent.at(-1)?.value ?? Number.NEGATIVE_INFINITY) + marginDegrees > high);
}

/** The least-squares line through the last 15 minutes is beyond the limit within so many minutes. */
export function straightLine(horizonMinutes: number): HeatForecaster {
  return rival((recent, high) => {
    const line = fitLine(recent);
    return line !== null && line.value + line.perMinute * horizonMinutes > high;
  });
}

/** The rest is the same for all: no new warning for half an hour after the limit was passed, the delays of the rule. */
function rival(isDue: (recent: readonly Measurement[], high: number) => boolean): HeatForecaster {
  let recent: Measurement[] = [];
  let beyondMs = Number.NEGATIVE_INFINITY;
  return {
    take(measured, high) {
      recent = [...recent.filter(({ timeMs }) => measured.timeMs - timeMs <= LINE_MS), measured];
      if (high !== null && measured.value > high) beyondMs = measured.timeMs;
    },
    lookAhead(high): HeatAhead {
      const isSameHeat = (recent.at(-1)?.timeMs ?? 0) - beyondMs < QUIET_MS;
      const nothing = { atMs: null, earliestMs: null, latestMs: null };
      return { chance: isDue(recent, high) ? 1 : 0, isSameHeat, expected: () => nothing };
    },
  };
}

/** Value now and slope; null with fewer than three readings. */
export function fitLine(recent: readonly Measurement[]): { readonly value: number; readonly perMinute: number } | null {
  const now = recent.at(-1)?.timeMs ?? 0;
  const points = recent.map(({ timeMs, value }) => ({ x: (timeMs - now) / MINUTE_MS, y: value }));
  const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;
  const [x, y] = [mean(points.map((point) => point.x)), mean(points.map((point) => point.y))];
  const spread = points.reduce((sum, point) => sum + (point.x - x) ** 2, 0);
  if (points.length < 3 || spread === 0) return null;
  const perMinute = points.reduce((sum, point) => sum + (point.x - x) * (point.y - y), 0) / spread;
  return { value: y - perMinute * x, perMinute };
}
