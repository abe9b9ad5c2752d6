// The forecast at an instant, between the places that were sent. Pure.
import type { ForecastView } from '../../shared/api/chambers.ts';

export interface Foreseen {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** Straight between its places, °C; null before its beginning and after its end. */
export function forecastAt(forecast: ForecastView | null, atSec: number): Foreseen | null {
  if (forecast === null) return null;
  const minutes = (atSec - Date.parse(forecast.from) / 1000) / 60;
  const after = forecast.minutes.findIndex((one) => one >= minutes);
  const [first = 0] = forecast.minutes;
  if (after < 0 || minutes < first) return null;
  const before = Math.max(0, after - 1);
  const [from = 0, to = 0] = [forecast.minutes[before], forecast.minutes[after]];
  const share = to === from ? 0 : (minutes - from) / (to - from);
  const between = (column: readonly number[]) =>
    (column[before] ?? 0) + share * ((column[after] ?? 0) - (column[before] ?? 0));
  return { low: between(forecast.low), middle: between(forecast.middle), high: between(forecast.high) };
}
