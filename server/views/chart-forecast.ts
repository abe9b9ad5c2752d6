// The cone of the temperature ahead, as it is sent to a chart. None where nothing fresh is known: a forecast from an old value would look fresh.
import type { ForecastView } from '../../shared/api/chambers.ts';
import { CONE_MINUTES, foreseeCone } from '../../shared/forecast/forecast-cone.ts';
import type { MixtureMemory } from '../../shared/forecast/trend-mixture.ts';
import { temperatureModel } from '../../shared/forecast/trend-models.ts';
import { MINUTE_MS, utcText } from '../../shared/units.ts';
import { rounded } from './rounded.ts';

/** A trend whose last reading is older has nothing to say of what comes (ours). */
const FRESH_MS = 5 * MINUTE_MS;

/** The cone from what is remembered of a chamber's heat; null when it is not fresh or now lies outside the stretch. */
export function chartForecast(
  trend: MixtureMemory,
  nowMs: number,
  { fromMs, toMs }: { readonly fromMs: number; readonly toMs: number },
): ForecastView | null {
  if (trend === null || nowMs - trend.timeMs > FRESH_MS || nowMs < fromMs || nowMs > toMs) return null;
  const steps = foreseeCone(trend, temperatureModel, CONE_MINUTES);
  const hundredths = (value: number) => rounded(value, 2) ?? value;
  return {
    from: utcText(trend.timeMs),
    minutes: [...CONE_MINUTES],
    low: steps.map(({ low }) => hundredths(low)),
    middle: steps.map(({ middle }) => hundredths(middle)),
    high: steps.map(({ high }) => hundredths(high)),
  };
}
