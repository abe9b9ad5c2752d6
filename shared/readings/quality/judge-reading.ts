// Judges the readings of one probe as they come: all tests of both quantities, one flag each. It keeps bad values out of the other tests,
// never out of the store: a bad reading is kept and flagged.
import { FLAG, type Flag } from '../reading.ts';
import { grossRange } from './gross-range.ts';
import { emptyQuantityMemory, flagAt, judgeQuantity, type QuantityMemory } from './judge-quantity.ts';
import type { QualityLimits, QuantityLimits } from './quality-limits.ts';
import type { Tested } from './sample.ts';
import { type AirSample, emptyWetSensorMemory, type WetSensorMemory, wetSensor } from './wet-sensor.ts';

/** What is remembered of one probe: constant in size, plain JSON. */
export interface ProbeQualityMemory {
  /** Time of the newest sample and of the one before it. */
  readonly timeMs: number | null;
  readonly previousMs: number | null;
  readonly temperature: QuantityMemory;
  readonly humidity: QuantityMemory;
  readonly wetSensor: WetSensorMemory;
}

export const emptyProbeQualityMemory: ProbeQualityMemory = {
  timeMs: null,
  previousMs: null,
  temperature: emptyQuantityMemory,
  humidity: emptyQuantityMemory,
  wetSensor: emptyWetSensorMemory,
};

export interface FlagsAt {
  readonly timeMs: number;
  readonly temperatureFlag: Flag;
  readonly humidityFlag: Flag;
}

export interface JudgedReading {
  readonly memory: ProbeQualityMemory;
  readonly temperatureFlag: Flag;
  readonly humidityFlag: Flag;
  /** The previous reading, when the spike test has now changed a flag of it; both flags are given. */
  readonly revised: FlagsAt | null;
  /** Humidity has been at its top for half an hour: unknown, high. Said beside the value, never a reason to distrust it. */
  readonly saturatedOrWet: boolean;
}

/**
 * Judges one sample. Samples come in time order: an older or repeated one gets the gross range test only and leaves the memory as it is.
 * A sample of the newest time may still bring the half (temperature or humidity) that was missing there; the other half keeps its flag.
 */
export function judgeReading(memory: ProbeQualityMemory, sample: AirSample, limits: QualityLimits): JudgedReading {
  const fresh = keepNewHalves(memory, sample);
  if (fresh === null) return judgeAlone(memory, sample, limits);
  const { timeMs } = sample;
  const previousMs = timeMs === memory.timeMs ? memory.previousMs : memory.timeMs;
  const half = { timeMs, previousMs };
  const temperature = judgeHalf(memory.temperature, fresh.temperature, half, limits.temperature, FLAG.notEvaluated);
  // A temperature that is itself in doubt is no evidence that the air got warmer.
  const trusted = temperature.flag === FLAG.pass ? fresh : { ...fresh, temperature: null };
  const wet = wetSensor(memory.wetSensor, trusted, limits.wetSensor);
  const humidity = judgeHalf(memory.humidity, fresh.humidity, half, limits.humidity, wet.flag);
  const halves = { temperature: temperature.memory, humidity: humidity.memory };
  return {
    memory: { timeMs, previousMs, ...halves, wetSensor: wet.memory },
    temperatureFlag: temperature.flag,
    humidityFlag: humidity.flag,
    revised: previousMs === null ? null : findRevised(memory, halves, previousMs),
    saturatedOrWet: wet.saturatedOrWet,
  };
}

/** The sample without the halves that were judged before; null when nothing of it is new. */
function keepNewHalves(memory: ProbeQualityMemory, sample: AirSample): AirSample | null {
  const { timeMs } = sample;
  if (memory.timeMs === null || timeMs > memory.timeMs) return sample;
  if (timeMs < memory.timeMs) return null;
  const temperature = memory.temperature.last?.timeMs === timeMs ? null : sample.temperature;
  const humidity = memory.humidity.last?.timeMs === timeMs ? null : sample.humidity;
  return temperature === null && humidity === null ? null : { timeMs, temperature, humidity };
}

function judgeAlone(memory: ProbeQualityMemory, sample: AirSample, limits: QualityLimits): JudgedReading {
  return {
    memory,
    temperatureFlag: grossRange(sample.temperature, limits.temperature.grossRange),
    humidityFlag: grossRange(sample.humidity, limits.humidity.grossRange),
    revised: null,
    saturatedOrWet: false,
  };
}

function judgeHalf(
  memory: QuantityMemory,
  value: number | null,
  { timeMs, previousMs }: { readonly timeMs: number; readonly previousMs: number | null },
  limits: QuantityLimits,
  otherFlag: Flag,
): Tested<QuantityMemory> {
  if (value === null) return { memory, flag: flagAt(memory, timeMs) };
  return judgeQuantity(memory, { timeMs, value }, previousMs, limits, otherFlag);
}

type Halves = Pick<ProbeQualityMemory, 'temperature' | 'humidity'>;

function findRevised(before: Halves, after: Halves, timeMs: number): FlagsAt | null {
  const temperatureFlag = flagAt(after.temperature, timeMs);
  const humidityFlag = flagAt(after.humidity, timeMs);
  const isSame =
    temperatureFlag === flagAt(before.temperature, timeMs) && humidityFlag === flagAt(before.humidity, timeMs);
  return isSame ? null : { timeMs, temperatureFlag, humidityFlag };
}
