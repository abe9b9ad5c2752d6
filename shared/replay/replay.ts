// A replay: a series of readings through quality tests, climate, corridor, alarm rules and forecast, as the live watch does it, on the clock of
// the readings. Pure and streaming; the same input gives the same result to the last byte, and memory does not grow with the readings.
import type { ClimateSample, DayExposure } from '../exposure/day-figures.ts';
import { SpellFinder } from '../forecast/find-spells.ts';
import { judgeWarnings } from '../forecast/judge-warnings.ts';
import type { Band, Corridor } from '../healing/corridor.ts';
import type { ChamberClimate } from '../readings/chamber-climate.ts';
import { MINUTE_MS, SECOND_MS } from '../units.ts';
import { AlarmRows } from './alarm-rows.ts';
import { createForecaster, type HeatForecaster } from './heat-forecaster.ts';
import { JudgedProbe } from './judged-probe.ts';
import { describeDay, type QualityTally, type ReplayResult } from './replay-result.ts';
import type { Care, ReplaySetup } from './replay-setup.ts';
import { ReplayedProbes } from './replayed-probes.ts';

/** The watch looks at its chambers this often when nothing is heard, so that delays and silence run out in time. */
const TICK_MS = 5 * SECOND_MS;
/** While nothing stands, nothing is pending and nothing about the chamber has changed, once a minute is enough. */
const CALM_TICK_MS = MINUTE_MS;
const CHAMBER = 'replay';

export class Replay {
  readonly #setup: ReplaySetup;
  readonly #probes: ReplayedProbes;
  readonly #judged: readonly JudgedProbe[];
  readonly #rows: AlarmRows;
  readonly #spells: SpellFinder;
  readonly #forecaster: HeatForecaster;
  #nowMs: number | null = null;
  /** What was judged last, and when. */
  #last: { readonly view: View; readonly atMs: number } | null = null;

  constructor(setup: ReplaySetup) {
    this.#setup = setup;
    this.#rows = new AlarmRows(CHAMBER, setup.rules);
    this.#probes = new ReplayedProbes(setup.probes);
    this.#judged = setup.probes.map(() => new JudgedProbe());
    this.#forecaster = setup.forecaster ?? createForecaster();
    this.#spells = new SpellFinder(Math.max(...setup.probes.map(({ silenceMs }) => silenceMs)));
  }

  /**
   * Takes a reading of a probe by its number in the set-up. Feed all probes in order of time. `corrected` = its values after calibration: the
   * quality tests judge the raw ones, everything else goes by these.
   */
  hear(probe: number, sample: ClimateSample, corrected: ClimateSample = sample): void {
    const judged = this.#judged[probe];
    if (judged === undefined) return;
    const { now, settled } = judged.judge(sample);
    if (settled !== null) this.#setup.settled?.(probe, settled);
    this.#tickTo(sample.timeMs);
    const { temperature, humidity } = corrected;
    this.#probes.hear(probe, { ...now, temperature, humidity });
    this.#nowMs = sample.timeMs;
    const view = this.#viewAt(sample.timeMs);
    this.#follow(view);
    this.#observe(sample.timeMs, view);
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
      const view = this.#viewAt(atMs);
      if (!this.#isAsBefore(view, atMs)) this.#observe(atMs, view);
    }
  }

  /** Nothing is pending, the view is the one judged last, and that was a moment ago. */
  #isAsBefore(view: View, atMs: number): boolean {
    const last = this.#last;
    if (last === null || !this.#rows.isCalm || atMs - last.atMs < 0 || atMs - last.atMs >= CALM_TICK_MS) return false;
    const { climate, care, corridor } = last.view;
    return climate === view.climate && care === view.care && sameCorridor(corridor, view.corridor);
  }

  #viewAt(atMs: number): View {
    const hasBatch = this.#hasBatch(atMs);
    return {
      climate: this.#probes.climate(atMs),
      corridor: hasBatch ? this.#setup.corridorAt(atMs) : null,
      care: hasBatch ? (this.#setup.careAt?.(atMs) ?? noCare) : noCare,
    };
  }

  #follow({ climate: { timeMs, hottest }, corridor }: View): void {
    if (timeMs === null || hottest === null) return;
    const high = corridor === null ? null : corridor.temperature.high;
    this.#forecaster.take({ timeMs, value: hottest }, high);
    this.#spells.add(timeMs, high === null ? null : hottest > high);
  }

  #observe(nowMs: number, view: View): void {
    const { climate, corridor, care } = view;
    this.#last = { view, atMs: nowMs };
    this.#rows.observe({
      nowMs,
      chamberId: CHAMBER,
      batchId: this.#hasBatch(nowMs) ? CHAMBER : null,
      corridor,
      climate,
      probes: this.#probes.scene(nowMs),
      readings: this.#probes.present(nowMs),
      ...care,
      ahead: corridor === null ? null : this.#forecaster.lookAhead(corridor.temperature.high),
    });
  }

  #hasBatch(atMs: number): boolean {
    const { fromMs, toMs } = this.#setup.batch;
    return atMs >= fromMs && (toMs === null || atMs < toMs);
  }
}

/** What the chamber shows at an instant. */
interface View {
  readonly climate: ChamberClimate;
  readonly corridor: Corridor | null;
  readonly care: Care;
}

const noCare: Care = {};

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
  if (a === b || a === null || b === null) return a === b;
  return sameBand(a.temperature, b.temperature) && sameBand(a.humidity, b.humidity);
}

function sameBand(a: Band, b: Band): boolean {
  return a.lowLow === b.lowLow && a.low === b.low && a.high === b.high && a.highHigh === b.highHigh;
}
