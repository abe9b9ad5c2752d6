// A replay: a series of readings through quality tests, climate, corridor, alarm rules and forecast, as the live watch does it, on the clock of
// the readings. Pure and streaming; the same input gives the same result to the last byte, and memory does not grow with the readings.
import type { Scene } from '../alarms/rules/rule.ts';
import type { ClimateSample, DayExposure } from '../exposure/day-figures.ts';
import { SpellFinder } from '../forecast/find-spells.ts';
import { judgeWarnings } from '../forecast/judge-warnings.ts';
import type { Band, Corridor } from '../healing/corridor.ts';
import type { ChamberClimate } from '../readings/chamber-climate.ts';
import { SECOND_MS } from '../units.ts';
import { AlarmRows } from './alarm-rows.ts';
import { createForecaster, type HeatForecaster } from './heat-forecaster.ts';
import { JudgedProbe, type JudgedSample } from './judged-probe.ts';
import { describeDay, type QualityTally, type ReplayResult } from './replay-result.ts';
import { ReplayedProbes, type ReplayProbe } from './replayed-probes.ts';

/** The watch looks at its chambers this often when nothing is heard, so that delays and silence run out in time. */
const TICK_MS = 5 * SECOND_MS;
const CHAMBER = 'replay';

export interface ReplaySetup {
  /** The probes of the chamber, canopy and film. */
  readonly probes: readonly ReplayProbe[];
  readonly corridorAt: (atMs: number) => Corridor | null;
  /** When the batch was in the chamber: from its opening (or closing), to its end; null = it is still there. */
  readonly batch: { readonly fromMs: number; readonly toMs: number | null };
  /** Foresees heat; that of the live watch when not given. Another is put here to be judged by the same rules. */
  readonly forecaster?: HeatForecaster;
  /** How often the watch looks when nothing is heard, ms; as often as the live one when not given. */
  readonly tickMs?: number;
  /** Gets every sample of a probe once it is judged for good, a reading later than it was heard. */
  readonly settled?: (probe: number, sample: JudgedSample) => void;
}

export class Replay {
  readonly #setup: ReplaySetup;
  readonly #probes: ReplayedProbes;
  readonly #judged: readonly JudgedProbe[];
  readonly #rows = new AlarmRows(CHAMBER);
  readonly #spells: SpellFinder;
  readonly #forecaster: HeatForecaster;
  #nowMs: number | null = null;
  #last: { readonly climate: ChamberClimate; readonly corridor: Corridor | null } | null = null;

  constructor(setup: ReplaySetup) {
    this.#setup = setup;
    this.#probes = new ReplayedProbes(setup.probes);
    this.#judged = setup.probes.map(() => new JudgedProbe());
    this.#forecaster = setup.forecaster ?? createForecaster();
    this.#spells = new SpellFinder(Math.max(...setup.probes.map(({ silenceMs }) => silenceMs)));
  }

  /** Takes a reading of a probe by its number in the set-up. Feed all probes in order of time. */
  hear(probe: number, sample: ClimateSample): void {
    const judged = this.#judged[probe];
    if (judged === undefined) return;
    const { now, settled } = judged.judge(sample);
    if (settled !== null) this.#setup.settled?.(probe, settled);
    this.#tickTo(sample.timeMs);
    this.#probes.hear(probe, now);
    this.#nowMs = sample.timeMs;
    const climate = this.#probes.climate(sample.timeMs);
    const corridor = this.#corridorAt(sample.timeMs);
    this.#follow(climate, corridor);
    this.#observe(sample.timeMs, climate, corridor);
  }

  /** Counts a row of a probe in which nothing could be read. */
  miss(probe: number): void {
    this.#judged[probe]?.miss();
  }

  /** Ends the series. `days` are asked for after the last samples have settled. */
  end(days: () => readonly DayExposure[]): ReplayResult {
    this.#judged.forEach((judged, probe) => {
      const last = judged.end();
      if (last !== null) this.#setup.settled?.(probe, last);
    });
    const { spells, knownMs } = this.#spells;
    return {
      alarms: this.#rows.alarms(),
      days: days().map(describeDay),
      quality: addUp(this.#judged.map((judged) => judged.tally())),
      ahead: judgeWarnings(this.#rows.warnings(), spells, { knownMs, endMs: this.#nowMs ?? 0 }),
    };
  }

  #tickTo(timeMs: number): void {
    if (this.#nowMs === null) return;
    const { tickMs = TICK_MS } = this.#setup;
    for (let atMs = this.#nowMs + tickMs; atMs < timeMs; atMs += tickMs) {
      const climate = this.#probes.climate(atMs);
      const corridor = this.#corridorAt(atMs);
      if (!this.#isAsBefore(climate, corridor)) this.#observe(atMs, climate, corridor);
    }
  }

  /** Nothing is pending and the scene is the one judged last: only time has passed, and that alone changes nothing. */
  #isAsBefore(climate: ChamberClimate, corridor: Corridor | null): boolean {
    const last = this.#last;
    return this.#rows.isCalm && last !== null && last.climate === climate && sameCorridor(last.corridor, corridor);
  }

  #follow({ timeMs, hottest }: ChamberClimate, corridor: Corridor | null): void {
    if (timeMs === null || hottest === null) return;
    const high = corridor === null ? null : corridor.temperature.high;
    this.#forecaster.take({ timeMs, value: hottest }, high);
    this.#spells.add(timeMs, high === null ? null : hottest > high);
  }

  #observe(nowMs: number, climate: ChamberClimate, corridor: Corridor | null): void {
    this.#last = { climate, corridor };
    this.#rows.observe(this.#scene(nowMs, climate, corridor));
  }

  #scene(nowMs: number, climate: ChamberClimate, corridor: Corridor | null): Scene {
    return {
      nowMs,
      chamberId: CHAMBER,
      batchId: this.#hasBatch(nowMs) ? CHAMBER : null,
      corridor,
      climate,
      probes: this.#probes.scene(nowMs),
      ahead: corridor === null ? null : this.#forecaster.lookAhead(corridor.temperature.high),
    };
  }

  #corridorAt(atMs: number): Corridor | null {
    return this.#hasBatch(atMs) ? this.#setup.corridorAt(atMs) : null;
  }

  #hasBatch(atMs: number): boolean {
    const { fromMs, toMs } = this.#setup.batch;
    return atMs >= fromMs && (toMs === null || atMs < toMs);
  }
}

function addUp(tallies: readonly QualityTally[]): QualityTally {
  const sum = { pass: 0, suspect: 0, fail: 0, missing: 0 };
  for (const tally of tallies) {
    sum.pass += tally.pass;
    sum.suspect += tally.suspect;
    sum.fail += tally.fail;
    sum.missing += tally.missing;
  }
  return sum;
}

function sameCorridor(a: Corridor | null, b: Corridor | null): boolean {
  if (a === null || b === null) return a === b;
  return sameBand(a.temperature, b.temperature) && sameBand(a.humidity, b.humidity);
}

function sameBand(a: Band, b: Band): boolean {
  return a.lowLow === b.lowLow && a.low === b.low && a.high === b.high && a.highHigh === b.highHigh;
}
