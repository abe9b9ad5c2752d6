// The calibration history of a probe, and a reading as it is after it. Raw values stay as they are stored: a correction is applied each time
// a reading is read, always to the raw value and never to one corrected before.
import { fourDecimals } from './reading.ts';

/** A fixed point: what the air was, and what the probe showed there before any correction, %RH. */
export interface HumidityPoint {
  readonly reference: number;
  readonly measured: number;
}

/** What is added to the raw value, °C or %RH. */
export interface Offset {
  readonly offset: number;
}

interface CalibrationStart {
  /** From this instant on, ms. */
  readonly fromMs: number;
  readonly temperature?: Offset | undefined;
}

/** An `offset` entry shifts; a `two-point` entry draws the line through two fixed points of humidity, and may shift temperature. */
export type Calibration =
  | (CalibrationStart & { readonly kind: 'offset'; readonly humidity?: Offset | undefined })
  | (CalibrationStart & { readonly kind: 'two-point'; readonly humidity: readonly [HumidityPoint, HumidityPoint] });

/** A reading as far as calibration goes; `null` halves stay null. */
export interface CalibratedHalves {
  readonly timeMs: number;
  readonly temperature: number | null;
  readonly humidity: number | null;
}

/** corrected = gain · raw + shift. */
interface Line {
  readonly gain: number;
  readonly shift: number;
}

/**
 * The reading with temperature and humidity corrected; everything else of it unchanged. For each quantity the entry that began last holds (of
 * two that began together the one later in the list), until a later entry names that quantity again: salts do not undo a temperature offset,
 * an offset of 0 does. Before its first entry a quantity is raw. No correction carries humidity over 100 or under 0 where the raw value was
 * not there already, so that saturated air stays possible air. Corrected values have four decimals, as stored ones have. Quality tests that look
 * at the sensor itself belong on the raw value.
 */
export function calibrate<R extends CalibratedHalves>(reading: R, history: readonly Calibration[]): R {
  if (history.length === 0) return reading;
  const temperature = correct(reading.temperature, temperatureLine(history, reading.timeMs));
  const humidity = correct(reading.humidity, humidityLine(history, reading.timeMs));
  return {
    ...reading,
    temperature: fourDecimals(temperature),
    humidity: fourDecimals(holdPossible(humidity, reading.humidity)),
  };
}

/**
 * True where a single straight line corrects everything a probe can have said from `fromMs` to before `toMs` with its humidity, if it said one,
 * between `min` and `max` %RH (0–100): then minimum, mean and maximum may be corrected in place of the readings. It is not so where an entry
 * begins in between, nor where only some of the corrected values would have to be held at 100 or 0.
 */
export function isCorrectedAlike(
  history: readonly Calibration[],
  { fromMs, toMs }: { readonly fromMs: number; readonly toMs: number },
  humidity: { readonly min: number; readonly max: number } | null,
): boolean {
  if (history.some((entry) => entry.fromMs > fromMs && entry.fromMs < toMs)) return false;
  const line = humidityLine(history, fromMs);
  if (line === null || humidity === null) return true;
  const [low, high] = [humidity.min, humidity.max].map((raw) => {
    const corrected = correct(raw, line);
    const held = holdPossible(corrected, raw);
    return { held, isHeld: held !== corrected };
  });
  return (!low?.isHeld && !high?.isHeld) || low?.held === high?.held;
}

/** Gain of the line through two points; not finite when the probe showed the same at both. */
export function gainOf([one, other]: readonly [HumidityPoint, HumidityPoint]): number {
  return (other.reference - one.reference) / (other.measured - one.measured);
}

function temperatureLine(history: readonly Calibration[], atMs: number): Line | null {
  const entry = lastBegun(history, atMs, ({ temperature }) => temperature !== undefined);
  return entry?.temperature === undefined ? null : { gain: 1, shift: entry.temperature.offset };
}

function humidityLine(history: readonly Calibration[], atMs: number): Line | null {
  const entry = lastBegun(history, atMs, ({ humidity }) => humidity !== undefined);
  if (entry?.humidity === undefined) return null;
  if (entry.kind === 'offset') return { gain: 1, shift: entry.humidity.offset };
  const gain = gainOf(entry.humidity);
  const [{ reference, measured }] = entry.humidity;
  return { gain, shift: reference - gain * measured };
}

function lastBegun(
  history: readonly Calibration[],
  atMs: number,
  names: (entry: Calibration) => boolean,
): Calibration | null {
  return history.reduce<Calibration | null>((last, entry) => {
    if (entry.fromMs > atMs || !names(entry)) return last;
    return last === null || entry.fromMs >= last.fromMs ? entry : last;
  }, null);
}

function correct(raw: number | null, line: Line | null): number | null {
  return raw === null || line === null ? raw : line.gain * raw + line.shift;
}

function holdPossible(humidity: number | null, raw: number | null): number | null {
  if (humidity === null || raw === null) return humidity;
  return Math.min(Math.max(100, raw), Math.max(Math.min(0, raw), humidity));
}
