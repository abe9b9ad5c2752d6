// One series of a chamber's climate out of its canopy probes, for the statistics of the record. With one probe it is that probe's good
// readings, unchanged; it never bridges a silence that a probe may not bridge.
import type { ClimateSample } from '../../shared/exposure/day-figures.ts';
import type { TimedValue } from '../../shared/exposure/segments.ts';
import { valueAt } from '../../shared/exposure/straight-line.ts';
import { median } from '../../shared/readings/median.ts';
import { FLAG, type Flag, type Reading } from '../../shared/readings/reading.ts';

/** The rule of this file in words: it stands in every record, so that anybody can compute its figures again. */
export const chamberSeriesRule =
  'Chamber climate: at each instant at which a canopy probe was read, the median over the canopy probes; a probe not read at that instant ' +
  'counts with the straight line between its two good readings around it if they are no further apart than its allowed silence. ' +
  'Good readings have flag 1 or 2, temperature and humidity each for itself. With a single canopy probe these are its good readings themselves.';

/**
 * Puts the readings of several probes together. Feed readings of all probes in time order; what `add` and `end` answer is in time order too.
 * Two instants of the series may be joined when they are no further apart than `silenceMs`, the shortest silence of the probes: where a probe
 * with a longer one goes on alone, its line is given in so many points that this holds.
 */
export class ChamberSeries {
  readonly silenceMs: number;
  readonly #probes: { readonly temperature: Track; readonly humidity: Track }[];
  readonly #tracks: Track[];
  /** Instants not yet certain, rising. */
  #pending: number[] = [];
  #nowMs = Number.NEGATIVE_INFINITY;

  /** `silencesMs[i]` is the longest gap that probe i's readings may bridge, ms. */
  constructor(silencesMs: readonly number[]) {
    this.silenceMs = Math.min(...silencesMs);
    this.#probes = silencesMs.map((silenceMs) => ({
      temperature: new Track(silenceMs),
      humidity: new Track(silenceMs),
    }));
    this.#tracks = this.#probes.flatMap(({ temperature, humidity }) => [temperature, humidity]);
  }

  /** Takes a reading of probe number `index` and answers with the instants that became certain. */
  add(index: number, reading: Reading): ClimateSample[] {
    const { timeMs, temperature, humidity, temperatureFlag, humidityFlag } = reading;
    const probe = this.#probes[index];
    if (probe === undefined) return [];
    this.#nowMs = timeMs;
    const between = [
      ...probe.temperature.add(timeMs, trusted(temperature, temperatureFlag), this.silenceMs),
      ...probe.humidity.add(timeMs, trusted(humidity, humidityFlag), this.silenceMs),
    ];
    if (between.length > 0) this.#pending = [...new Set([...this.#pending, ...between])].sort((a, b) => a - b);
    if (this.#pending.at(-1) !== timeMs) this.#pending.push(timeMs);
    return this.#settle();
  }

  /** No reading follows: the instants that are left. */
  end(): ClimateSample[] {
    this.#nowMs = Number.POSITIVE_INFINITY;
    return this.#settle();
  }

  #settle(): ClimateSample[] {
    const certain: ClimateSample[] = [];
    for (const timeMs of this.#pending) {
      // At the newest instant itself other probes may yet be read.
      if (timeMs >= this.#nowMs || !this.#tracks.every((track) => track.isSettled(timeMs, this.#nowMs))) break;
      certain.push({
        timeMs,
        temperature: median(this.#probes.flatMap((probe) => probe.temperature.valueAt(timeMs) ?? [])),
        humidity: median(this.#probes.flatMap((probe) => probe.humidity.valueAt(timeMs) ?? [])),
      });
    }
    if (certain.length > 0) {
      this.#pending = this.#pending.slice(certain.length);
      for (const track of this.#tracks) track.forgetBefore(this.#pending[0] ?? Number.POSITIVE_INFINITY);
    }
    return certain;
  }
}

/** One quantity of one probe around the instants that are not yet certain. */
class Track {
  readonly #silenceMs: number;
  #good: TimedValue[] = [];
  /** Instants at which the probe was read and this quantity was missing or bad. */
  #bad: number[] = [];

  constructor(silenceMs: number) {
    this.#silenceMs = silenceMs;
  }

  /** Answers with the instants that must be added so that no two of this line are further apart than `stepMs`. */
  add(timeMs: number, value: number | null, stepMs: number): number[] {
    if (value === null) {
      this.#bad.push(timeMs);
      return [];
    }
    const last = this.#good.at(-1);
    this.#good.push({ timeMs, value });
    const gapMs = last === undefined ? 0 : timeMs - last.timeMs;
    if (last === undefined || gapMs <= stepMs || gapMs > this.#silenceMs) return [];
    const count = Math.ceil(gapMs / stepMs);
    return Array.from({ length: count - 1 }, (_, i) => last.timeMs + Math.floor((gapMs * (i + 1)) / count));
  }

  /** True when nothing that may still be read can change the value at this instant. */
  isSettled(timeMs: number, nowMs: number): boolean {
    const last = this.#good.at(-1);
    return last === undefined || last.timeMs >= timeMs || nowMs - last.timeMs > this.#silenceMs;
  }

  valueAt(timeMs: number): number | null {
    if (this.#bad.includes(timeMs)) return null;
    const after = this.#good.findIndex((one) => one.timeMs >= timeMs);
    const [from, to] = [this.#good[after - 1], this.#good[after]];
    if (to?.timeMs === timeMs) return to.value;
    if (from === undefined || to === undefined || to.timeMs - from.timeMs > this.#silenceMs) return null;
    return valueAt({ fromMs: from.timeMs, toMs: to.timeMs, fromValue: from.value, toValue: to.value }, timeMs);
  }

  forgetBefore(timeMs: number): void {
    const from = this.#good.findLastIndex((one) => one.timeMs <= timeMs);
    if (from > 0) this.#good = this.#good.slice(from);
    this.#bad = this.#bad.filter((one) => one >= timeMs);
  }
}

function trusted(value: number | null, flag: Flag): number | null {
  return flag === FLAG.pass || flag === FLAG.notEvaluated ? value : null;
}
