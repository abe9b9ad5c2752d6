// A run of the quality tests over readings of one probe, some stored and some just come, and what it changes in the store.
import type { FlagsAt, ProbeQualityMemory } from '../../shared/readings/quality/judge-reading.ts';
import type { QualityLimits } from '../../shared/readings/quality/quality-limits.ts';
import { QualityRun, type QualityState } from '../../shared/readings/quality/quality-run.ts';
import { FLAG, type Reading } from '../../shared/readings/reading.ts';
import { LATE_AFTER_MS } from '../../shared/readings/silence.ts';
import type { Commit } from '../store/store.ts';
import type { ProbeState } from '../watch/probe-book.ts';
import { complete, type Incoming } from './gather-arrivals.ts';

/** What a probe's arrivals come to: rows for one transaction, and the probe as it is after it. */
export interface JudgedProbe extends Required<Pick<Commit, 'readings' | 'revised' | 'checkpoints'>> {
  readonly next: ProbeState;
}

export class ProbeRun {
  readonly #run: QualityRun;
  readonly #limitsAt: (timeMs: number) => QualityLimits;
  readonly #storedFlags = new Map<number, FlagsAt>();
  readonly #taken: Reading[] = [];
  readonly #newestMs: number | null;
  #newest: { readonly reading: Reading; readonly quality: QualityState } | null = null;

  /** `newestMs`: the reading from which the probe goes on, if the run comes to it. */
  constructor(memory: ProbeQualityMemory, newestMs: number | null, limitsAt: (timeMs: number) => QualityLimits) {
    this.#run = new QualityRun(memory);
    this.#newestMs = newestMs;
    this.#limitsAt = limitsAt;
  }

  /** The flags that a reading has in the store. */
  know(flags: FlagsAt): void {
    this.#storedFlags.set(flags.timeMs, flags);
  }

  /** Takes the next reading: as stored, as it came, or as stored and now completed. */
  take(stored: Reading | null, incoming: Incoming | null): void {
    if (stored !== null) this.know(stored);
    const reading = wholeOf(stored, incoming);
    if (reading === null) return;
    this.#run.add(reading, this.#limitsAt(reading.timeMs));
    if (reading.timeMs === this.#newestMs) this.#newest = { reading, quality: this.#run.state };
    if (incoming !== null) this.#taken.push(reading);
  }

  get memory(): ProbeQualityMemory {
    return this.#run.state.memory;
  }

  beginsSlot(timeMs: number): boolean {
    return this.#run.beginsSlot(timeMs);
  }

  /** The probe goes on from its newest reading; where the run did not come to that, it stays as it is. */
  result(state: ProbeState): JudgedProbe {
    const { number } = state.probe;
    const judged = new Map(this.#run.judged.map((flags) => [flags.timeMs, flags]));
    const flagged = (reading: Reading): Reading => ({ ...reading, ...judged.get(reading.timeMs) });
    // Before the first reading that came nothing can have changed but the flags of the one beside it.
    const first = this.#run.judged.findIndex(({ timeMs }) => timeMs === this.#taken[0]?.timeMs);
    const touched = first < 0 ? [] : this.#run.judged.slice(Math.max(0, first - 1));
    const { reading: newest, quality } = this.#newest ?? { reading: null, quality: null };
    return {
      readings: this.#taken.map((reading) => ({ probe: number, ...flagged(reading) })),
      revised: touched.filter((flags) => this.#isRevised(flags)).map((flags) => ({ probe: number, ...flags })),
      checkpoints: this.#run.checkpoints.map((checkpoint) => ({ probe: number, ...checkpoint })),
      next: newest === null ? state : { ...state, newest: flagged(newest), quality },
    };
  }

  #isRevised({ timeMs, temperatureFlag, humidityFlag }: FlagsAt): boolean {
    const stored = this.#storedFlags.get(timeMs);
    if (stored === undefined) return false;
    return stored.temperatureFlag !== temperatureFlag || stored.humidityFlag !== humidityFlag;
  }
}

function wholeOf(stored: Reading | null, incoming: Incoming | null): Reading | null {
  if (incoming === null) return stored;
  if (stored !== null) return complete(stored, incoming);
  const late = incoming.receivedMs - incoming.timeMs > LATE_AFTER_MS;
  return { ...incoming, late, temperatureFlag: FLAG.missing, humidityFlag: FLAG.missing };
}
