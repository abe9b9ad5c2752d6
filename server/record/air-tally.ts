// What the probes of a batch say about each other and about the film, in hours: how long a canopy probe stood alone against its neighbours, and for
// how long the film was expected wet or dry. It looks once a minute at the newest healthy readings; memory does not grow with their number.
import { expectCondensation } from '../../shared/air/condensation.ts';
import { median } from '../../shared/readings/median.ts';
import { compareNeighbours } from '../../shared/readings/quality/neighbours.ts';
import { FLAG, type Flag, type Reading } from '../../shared/readings/reading.ts';
import { HOUR_MS, MINUTE_MS } from '../../shared/units.ts';
import type { ProbeSource } from './record-sources.ts';

/** The rule of this file in words, for the record. */
export const airTallyRule =
  'Once a minute the newest good readings are laid beside each other. A canopy probe disagrees when fewer than half of the others are within 0.5 °C or 4 %RH ' +
  'of it. The film is expected wet where the dew point of the canopy air is above the film by more than the uncertainty of both, dry where it is below by ' +
  'more; by a film probe, else estimated from house air. It is an expectation, never a look: what people saw is among the checks and the log.';

export interface FilmHours {
  readonly wetHours: number;
  readonly dryHours: number;
  /** Cannot be told, or nothing was heard. */
  readonly unknownHours: number;
}

export interface Disagreement {
  /** Hours in which the probe stood alone in temperature or humidity. */
  readonly hours: number;
  /** Furthest from the median of the others, °C and %RH with their sign; null = never. */
  readonly temperature: number | null;
  readonly humidity: number | null;
}

interface Heard {
  readonly timeMs: number;
  readonly temperature: number | null;
  readonly humidity: number | null;
}

interface Alone {
  ms: number;
  temperature: number | null;
  humidity: number | null;
}

export class AirTally {
  readonly #sources: readonly ProbeSource[];
  readonly #span: { readonly fromMs: number; readonly toMs: number };
  readonly #newest = new Map<ProbeSource, Heard>();
  readonly #alone = new Map<ProbeSource, Alone>();
  #wetMs = 0;
  #dryMs = 0;
  #lookedMs = Number.NEGATIVE_INFINITY;

  /** `span`: from closing to the end of the record. */
  constructor(sources: readonly ProbeSource[], span: { readonly fromMs: number; readonly toMs: number }) {
    this.#sources = sources;
    this.#span = span;
  }

  /** Takes readings of all sources in order of time. */
  add(source: ProbeSource, { timeMs, temperature, humidity, temperatureFlag, humidityFlag }: Reading): void {
    if (timeMs >= this.#lookedMs + MINUTE_MS) this.#look(timeMs);
    this.#newest.set(source, {
      timeMs,
      temperature: isGood(temperatureFlag) ? temperature : null,
      humidity: isGood(humidityFlag) ? humidity : null,
    });
  }

  film(): FilmHours {
    const all = Math.max(0, this.#span.toMs - this.#span.fromMs);
    const hours = (ms: number) => ms / HOUR_MS;
    return {
      wetHours: hours(this.#wetMs),
      dryHours: hours(this.#dryMs),
      unknownHours: hours(all - this.#wetMs - this.#dryMs),
    };
  }

  disagreement(source: ProbeSource): Disagreement {
    const alone = this.#alone.get(source);
    return {
      hours: (alone?.ms ?? 0) / HOUR_MS,
      temperature: alone?.temperature ?? null,
      humidity: alone?.humidity ?? null,
    };
  }

  /** What stood at the last look is held to have lasted until now, for as long as its probes may be silent. */
  #look(nowMs: number): void {
    const lastMs = Math.max(this.#lookedMs, this.#span.fromMs);
    const lastedMs = Math.min(nowMs, this.#span.toMs) - lastMs;
    this.#lookedMs = nowMs;
    if (!(lastedMs > 0 && lastedMs <= this.#longestSilenceMs())) return;
    this.#compare(nowMs, lastedMs);
    const expected = this.#expectFilm(nowMs);
    if (expected === 'wet') this.#wetMs += lastedMs;
    if (expected === 'dry') this.#dryMs += lastedMs;
  }

  #compare(nowMs: number, lastedMs: number): void {
    const canopy = this.#fresh('canopy', nowMs);
    if (canopy.length < 2) return;
    const counted = new Set<ProbeSource>();
    for (const { probeId, quantity, difference } of compareNeighbours(
      canopy.map(({ heard }, i) => ({ ...heard, probeId: String(i) })),
    )) {
      const source = canopy[Number(probeId)]?.source;
      if (source === undefined) continue;
      const alone = this.#alone.get(source) ?? { ms: 0, temperature: null, humidity: null };
      if (Math.abs(difference) > Math.abs(alone[quantity] ?? 0)) alone[quantity] = difference;
      if (!counted.has(source)) alone.ms += lastedMs;
      counted.add(source);
      this.#alone.set(source, alone);
    }
  }

  #expectFilm(nowMs: number): 'wet' | 'dry' | 'unknown' {
    const middle = (place: ProbeSource['place'], name: 'temperature' | 'humidity') =>
      median(this.#fresh(place, nowMs).flatMap(({ heard }) => heard[name] ?? []));
    return expectCondensation({
      temperature: middle('canopy', 'temperature'),
      humidity: middle('canopy', 'humidity'),
      filmTemperature: middle('film', 'temperature'),
      houseTemperature: middle('house', 'temperature'),
    }).expected;
  }

  #fresh(place: ProbeSource['place'], nowMs: number): { source: ProbeSource; heard: Heard }[] {
    return this.#sources.flatMap((source) => {
      const heard = source.place === place ? this.#newest.get(source) : undefined;
      return heard === undefined || nowMs - heard.timeMs > source.silenceMs ? [] : [{ source, heard }];
    });
  }

  #longestSilenceMs(): number {
    return Math.max(0, ...this.#sources.map(({ silenceMs }) => silenceMs));
  }
}

function isGood(flag: Flag): boolean {
  return flag === FLAG.pass || flag === FLAG.notEvaluated;
}
