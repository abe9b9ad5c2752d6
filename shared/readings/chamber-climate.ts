// The climate of a chamber now, from its healthy canopy probes. It must never show an old or doubted value as if it were the air's:
// without a healthy probe there is no climate.
import { dewPoint, vapourKpa, vpdKpa } from '../air/vapour.ts';
import { median } from './median.ts';
import { FLAG, type Flag } from './reading.ts';

/** The newest reading of one probe. */
export interface ProbeNow {
  readonly probeId: string;
  readonly place: 'canopy' | 'film' | 'house';
  readonly timeMs: number;
  readonly temperature: number | null;
  readonly humidity: number | null;
  readonly temperatureFlag: Flag;
  readonly humidityFlag: Flag;
  /** How long this probe may be silent before its reading is old, ms. */
  readonly silenceMs: number;
}

/** °C and %RH; `null` = no healthy probe says. */
export interface ChamberClimate {
  /** Time of the newest healthy reading. */
  readonly timeMs: number | null;
  /** Median of the healthy probes, as is every shown value. */
  readonly temperature: number | null;
  readonly humidity: number | null;
  readonly vpdKpa: number | null;
  readonly dewPoint: number | null;
  readonly hottest: number | null;
  readonly coldest: number | null;
  readonly driest: number | null;
  readonly wettest: number | null;
  /** Canopy probes with at least one healthy quantity; 0 = the chamber has no climate. */
  readonly healthyProbes: number;
  /** Canopy probes that were heard at all. */
  readonly canopyProbes: number;
}

/** What is healthy of one canopy probe; a quantity that is not is null. */
export interface HealthyReading {
  readonly probeId: string;
  readonly timeMs: number;
  readonly temperature: number | null;
  readonly humidity: number | null;
}

/** A fresh value that was kept out of the climate because of its flag. */
export interface LeftOut {
  readonly probeId: string;
  readonly quantity: 'temperature' | 'humidity';
  readonly value: number;
  readonly flag: Flag;
}

/**
 * Climate at `nowMs` from the newest reading of each probe. Heat is judged by `hottest`, dryness by `driest`. VPD and dew point are taken per
 * probe, from temperature and humidity of the same air, and then their median: near saturation half a degree between two points is 3 %RH.
 * The site's altitude is part of the call but changes none of these values: neither VPD nor dew point depends on pressure.
 */
export function chamberClimate(probes: readonly ProbeNow[], nowMs: number, _altitudeM: number): ChamberClimate {
  const healthy = healthyCanopy(probes, nowMs);
  const temperatures = healthy.flatMap((one) => one.temperature ?? []);
  const humidities = healthy.flatMap((one) => one.humidity ?? []);
  return {
    timeMs: highest(healthy.map((one) => one.timeMs)),
    temperature: median(temperatures),
    humidity: median(humidities),
    vpdKpa: medianOfAir(healthy, vpdKpa),
    dewPoint: medianOfAir(healthy, (temperature, humidity) => dewPoint(vapourKpa(temperature, humidity))),
    hottest: highest(temperatures),
    coldest: lowest(temperatures),
    driest: lowest(humidities),
    wettest: highest(humidities),
    healthyProbes: healthy.length,
    canopyProbes: probes.filter((probe) => probe.place === 'canopy').length,
  };
}

/** The canopy probes heard within their silence that have a healthy quantity (flag pass or not evaluated), and only what is healthy of them. */
export function healthyCanopy(probes: readonly ProbeNow[], nowMs: number): HealthyReading[] {
  return freshCanopy(probes, nowMs).flatMap((probe) => {
    const temperature = isTrusted(probe.temperatureFlag) ? probe.temperature : null;
    const humidity = isTrusted(probe.humidityFlag) ? probe.humidity : null;
    if (temperature === null && humidity === null) return [];
    return [{ probeId: probe.probeId, timeMs: probe.timeMs, temperature, humidity }];
  });
}

/**
 * The fresh canopy values that the climate leaves out as suspect or failed. A doubted value raises no alarm but "probe suspect"; this list is
 * what that alarm tells, so that a doubted *hot* value is seen by a person and does not vanish.
 */
export function leftOutReadings(probes: readonly ProbeNow[], nowMs: number): LeftOut[] {
  return freshCanopy(probes, nowMs)
    .filter((probe) => !isTrusted(probe.temperatureFlag) || !isTrusted(probe.humidityFlag))
    .flatMap((probe) => [
      ...leftOut(probe.probeId, 'temperature', probe.temperature, probe.temperatureFlag),
      ...leftOut(probe.probeId, 'humidity', probe.humidity, probe.humidityFlag),
    ]);
}

function medianOfAir(
  healthy: readonly HealthyReading[],
  describe: (temperature: number, humidity: number) => number | null,
): number | null {
  const values = healthy.flatMap(({ temperature, humidity }) =>
    temperature === null || humidity === null ? [] : (describe(temperature, humidity) ?? []),
  );
  return median(values);
}

function leftOut(probeId: string, quantity: LeftOut['quantity'], value: number | null, flag: Flag): LeftOut[] {
  return value === null || isTrusted(flag) ? [] : [{ probeId, quantity, value, flag }];
}

function freshCanopy(probes: readonly ProbeNow[], nowMs: number): ProbeNow[] {
  return probes.filter((probe) => probe.place === 'canopy' && nowMs - probe.timeMs <= probe.silenceMs);
}

function isTrusted(flag: Flag): boolean {
  return flag === FLAG.pass || flag === FLAG.notEvaluated;
}

function highest(values: readonly number[]): number | null {
  return values.length === 0 ? null : Math.max(...values);
}

function lowest(values: readonly number[]): number | null {
  return values.length === 0 ? null : Math.min(...values);
}
