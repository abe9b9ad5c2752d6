// What stands between the air of the simulated tent and the number a node sends: lag, offset, noise, resolution, the cap at 100 %RH.
import { createNoise } from './seeded-noise.ts';

export interface ProbeValues {
  /** °C and %RH, to two decimals. */
  readonly temperature: number;
  readonly humidity: number;
}

export interface SimulatedSensor {
  /** The air around the probe for the next `seconds`. */
  readonly follow: (temperature: number, humidity: number, seconds: number) => void;
  /** A reading now; each call draws new noise. */
  readonly read: () => ProbeValues;
}

interface SensorTraits {
  readonly seed: number;
  readonly temperatureOffset: number;
  readonly humidityOffset: number;
}

/** Time constants in slow air, s: a plain capacitive probe behind a thin shield. */
const TEMPERATURE_LAG_SECONDS = 45;
const HUMIDITY_LAG_SECONDS = 30;
/** Standard deviations, so that nearly all readings lie within ±0.05 °C and ±0.4 %RH. */
const TEMPERATURE_NOISE = 0.02;
const HUMIDITY_NOISE = 0.16;

/** A probe that starts at the first values it is shown. Humidity is reported as 0–100. */
export function createSensor(traits: SensorTraits): SimulatedSensor {
  const noise = createNoise(traits.seed);
  let felt: ProbeValues | null = null;
  return {
    follow: (temperature, humidity, seconds) => {
      felt = {
        temperature: lag(felt?.temperature, temperature, seconds / TEMPERATURE_LAG_SECONDS),
        humidity: lag(felt?.humidity, humidity, seconds / HUMIDITY_LAG_SECONDS),
      };
    },
    read: () => {
      const { temperature, humidity } = felt ?? { temperature: 20, humidity: 60 };
      return {
        temperature: round(temperature + traits.temperatureOffset + TEMPERATURE_NOISE * noise.normal()),
        humidity: round(clampHumidity(humidity + traits.humidityOffset + HUMIDITY_NOISE * noise.normal())),
      };
    },
  };
}

function lag(before: number | undefined, target: number, timeConstants: number): number {
  return before === undefined ? target : target + (before - target) * Math.exp(-timeConstants);
}

function clampHumidity(humidity: number): number {
  return Math.min(100, Math.max(0, humidity));
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
