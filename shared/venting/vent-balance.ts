// Where the chamber's humidity would settle at a gap, how far that can be trusted, and how fast it gets there.
import { type ProbeAccuracy, usualProbe } from '../air/air-uncertainty.ts';
import type { ExchangeFit } from './fit-exchange.ts';
import { humidityOfRatio, ratioOfAir } from './humidity-ratio-series.ts';
import type { RateAtGap, RateCurve } from './rate-curve.ts';

/** Air now, both halves known. */
export interface AirNow {
  readonly temperature: number;
  readonly humidity: number;
}

export interface VentAir {
  readonly chamber: AirNow;
  readonly house: AirNow;
  readonly altitudeM: number;
  /** The gap now. */
  readonly gapPercent: number;
}

/** %RH; `plusMinus` is for about 95 %. */
export interface VentBalance {
  readonly humidity: number;
  readonly plusMinus: number;
  readonly ratePerHour: number;
}

/** Standard errors that make up about 95 %. */
const COVER = 2;

/**
 * The balance at a gap: of the way from house air to saturation in the chamber's warmth, the share conductance/rate. The ± holds the errors of
 * both (which partly cancel), of the probes, and of the temperature. Probe errors count only as far as the rate differs from the one the
 * source was fitted with: at the same gap an offset of a probe is in the source already. The chamber's warmth goes with the air to some part:
 * between none of it and the share by which the rate grows, the middle being taken. Null outside the curve.
 */
export function balanceAt(
  fit: ExchangeFit,
  curve: RateCurve,
  air: VentAir,
  gapPercent: number,
  accuracy: ProbeAccuracy = usualProbe,
): VentBalance | null {
  const rate = curve.rateAt(gapPercent);
  if (rate === null) return null;
  const share = fit.source.conductancePerHour / rate.ratePerHour;
  const warmth = warmthLost(curve, air, rate);
  const temperature = air.chamber.temperature - warmth / 2;
  const humidity = humidityAt(air, share, temperature);
  const error = shareError(fit, rate, share);
  const byFit = (humidityAt(air, share + error, temperature) - humidityAt(air, share - error, temperature)) / 2;
  const byWarmth =
    (humidityAt(air, share, air.chamber.temperature - warmth) - humidityAt(air, share, air.chamber.temperature)) / 2;
  const changed = 1 - (fit.levels[fit.source.level]?.ratePerHour ?? rate.ratePerHour) / rate.ratePerHour;
  const byProbes = Math.SQRT2 * accuracy.humidity * changed;
  return { humidity, plusMinus: Math.hypot(COVER * byFit, byWarmth, byProbes), ratePerHour: rate.ratePerHour };
}

/** %RH of air that has come this share of the way from house air to saturation at a temperature. */
function humidityAt({ house, altitudeM }: VentAir, share: number, temperature: number): number {
  const outside = ratioOfAir(house.temperature, house.humidity, altitudeM);
  const saturated = ratioOfAir(temperature, 100, altitudeM);
  return humidityOfRatio(outside + share * (saturated - outside), temperature, altitudeM);
}

/** Standard error of conductance/rate: the newest window gave the one and part of the other, so that their errors are not independent. */
function shareError({ source }: ExchangeFit, rate: RateAtGap, share: number): number {
  const weight = (rate.weights[source.level] ?? 0) * source.shareOfLevel;
  const together = weight * source.slopeOnRate * source.rateError ** 2;
  const variance = source.standardError ** 2 - 2 * share * together + (share * rate.standardError) ** 2;
  return Math.sqrt(Math.max(0, variance)) / rate.ratePerHour;
}

/** The most of the chamber's excess warmth that a wider gap takes away, °C; 0 where it is not wider. */
function warmthLost(curve: RateCurve, { chamber, house, gapPercent }: VentAir, rate: RateAtGap): number {
  const now = curve.rateAt(gapPercent);
  const share = now === null ? 1 : Math.max(0, 1 - now.ratePerHour / rate.ratePerHour);
  return share * (chamber.temperature - house.temperature);
}
