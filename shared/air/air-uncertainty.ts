// How far a probe's own inaccuracy reaches into what is computed from it, and whether a value can be told from a limit at all.
// It knows what the datasheet says, never what this probe really does: drift and wet sensors are for calibration and the quality tests.
import { pressureAtAltitudeKpa } from './standard-atmosphere.ts';
import { dewPoint, humidityRatio, saturationKpa, vapourKpa } from './vapour.ts';

/** ±°C and ±%RH. Whatever share of readings the maker's ± covers, the results here cover the same. */
export interface ProbeAccuracy {
  readonly temperature: number;
  readonly humidity: number;
}

/** Usual capacitive probe: the wider end of ±1–2 %RH and ±0.1–0.2 °C (notes on sensors in wet air). */
export const usualProbe: ProbeAccuracy = { temperature: 0.2, humidity: 2 };
/** A better one: the narrower end of the same. */
export const fineProbe: ProbeAccuracy = { temperature: 0.1, humidity: 1 };
/** Hysteresis of capacitive sensors, %RH (the same notes). */
const HYSTERESIS = 1;

/** ± on what is computed from one probe. `dewPoint` is null where there is none. */
export interface AirUncertainty {
  readonly vpdKpa: number;
  readonly dewPoint: number | null;
  readonly humidityRatio: number;
}

interface Air {
  readonly temperature: number;
  readonly humidity: number;
  readonly altitudeM: number;
}

/** The accuracy of a probe that has been in nearly saturated air for long: its hysteresis comes on top, as the root of the sum of squares. */
export function accuracyInWetAir(accuracy: ProbeAccuracy): ProbeAccuracy {
  return { ...accuracy, humidity: Math.hypot(accuracy.humidity, HYSTERESIS) };
}

/**
 * ± on VPD, dew point and humidity ratio of air at °C, %RH (held to 0–100) and altitude in m, from the ± of its probe: first-order
 * propagation, the errors of temperature and humidity taken as independent (correlation zero). A probe that warms itself errs in both
 * together, and is worse than this says. Near 100 %RH the true VPD cannot be negative: there the ± is one-sided. Below some 10 %RH the dew
 * point bends too much for a first-order figure.
 */
export function airUncertainty(air: Air, accuracy: ProbeAccuracy): AirUncertainty {
  const { temperature } = air;
  const share = Math.min(1, Math.max(0, air.humidity / 100));
  const saturation = saturationKpa(temperature);
  const slope = saturationSlope(temperature);
  const byHumidity = (saturation * accuracy.humidity) / 100;
  const vapourPlusMinus = Math.hypot(byHumidity, share * slope * accuracy.temperature);
  const vapour = vapourKpa(temperature, air.humidity);
  return {
    vpdKpa: Math.hypot(byHumidity, (1 - share) * slope * accuracy.temperature),
    dewPoint: dewPointPlusMinus(vapour, vapourPlusMinus),
    humidityRatio: ratioSlope(vapour, pressureAtAltitudeKpa(air.altitudeM)) * vapourPlusMinus,
  };
}

/** Where a value with its ± stands to a limit; `cannot be resolved` where the limit lies within the ±, its ends included. */
export function tellFromLimit(
  value: number,
  plusMinus: number,
  limit: number,
): 'above' | 'below' | 'cannot be resolved' {
  if (value - plusMinus > limit) return 'above';
  return value + plusMinus < limit ? 'below' : 'cannot be resolved';
}

function dewPointPlusMinus(vapour: number, plusMinus: number): number | null {
  const dew = dewPoint(vapour);
  return dew === null ? null : plusMinus / saturationSlope(dew);
}

/** d(saturation)/dT, kPa/K, as a central difference: its error is below 1e-8 of the slope, far under any probe's. */
function saturationSlope(temperature: number): number {
  const step = 0.01;
  return (saturationKpa(temperature + step) - saturationKpa(temperature - step)) / (2 * step);
}

/** dw/de of w = 0.621945 e/(p − e), from the ratio itself: w·p/(e·(p − e)); at no vapour its limit. */
function ratioSlope(vapour: number, pressure: number): number {
  const held = Math.max(vapour, 1e-9);
  return (humidityRatio(held, pressure) * pressure) / (held * (pressure - held));
}
