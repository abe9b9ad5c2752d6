// How far forecasts of a value some minutes ahead are off: ours, the last value held, a straight line through 15 minutes.
import { advanceTrend, type Measurement } from '../../shared/forecast/local-linear-trend.ts';
import { type Mixture, noMixture, updateMixture } from '../../shared/forecast/trend-mixture.ts';
import { temperatureModel } from '../../shared/forecast/trend-models.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import { fitLine, LINE_MS } from './forecast-rivals.ts';

export interface ForecastErrors {
  readonly ours: number;
  readonly held: number;
  readonly line: number;
}

/** A reading counts as the one so far ahead when it is no further than this from it. */
const NEAR_MS = 3 * MINUTE_MS;

/** Mean absolute error over all readings that have one about `minutes` later; each forecast is made for the very time of that reading. */
export function meanErrors(series: readonly Measurement[], minutes: number): ForecastErrors {
  const sums = { ours: 0, held: 0, line: 0 };
  let count = 0;
  let mixture: Mixture | null = noMixture;
  let first = 0;
  let later = 0;
  series.forEach((now, i) => {
    mixture = updateMixture(mixture, now, temperatureModel);
    while (now.timeMs - (series[first]?.timeMs ?? now.timeMs) > LINE_MS) first += 1;
    while ((series[later]?.timeMs ?? Infinity) < now.timeMs + minutes * MINUTE_MS) later += 1;
    const came = series[later];
    const line = fitLine(series.slice(first, i + 1));
    if (came === undefined || mixture === null || line === null) return;
    const aheadMinutes = (came.timeMs - now.timeMs) / MINUTE_MS;
    if (came.timeMs - now.timeMs - minutes * MINUTE_MS > NEAR_MS) return;
    count += 1;
    sums.ours += Math.abs(came.value - expectedAfter(mixture, aheadMinutes));
    sums.held += Math.abs(came.value - now.value);
    sums.line += Math.abs(came.value - line.value - line.perMinute * aheadMinutes);
  });
  return { ours: sums.ours / count, held: sums.held / count, line: sums.line / count };
}

function expectedAfter({ trends }: Mixture, minutes: number): number {
  return trends.reduce((sum, { trend, weight }, i) => {
    const temper = temperatureModel.tempers[i];
    return temper === undefined ? sum : sum + weight * advanceTrend(trend, minutes, temper).level;
  }, 0);
}
