// The quality tests of one probe over a run of whole readings in order of time. Flags depend on the readings and their order of time alone:
// whoever starts a run from the right memory gets the flags that judging everything from the beginning would give.
import { HOUR_MS } from '../../units.ts';
import { flagAt } from './judge-quantity.ts';
import { emptyProbeQualityMemory, type FlagsAt, judgeReading, type ProbeQualityMemory } from './judge-reading.ts';
import type { QualityLimits } from './quality-limits.ts';
import type { AirSample } from './wet-sensor.ts';

/** Memories are kept this far apart (ours): a run that a late reading makes necessary goes back so far at most. */
export const SLOT_MS = 6 * HOUR_MS;

/** The memory before the first reading of a slot; there is one for every slot with a reading. */
export interface QualityCheckpoint {
  /** Beginning of the slot, ms. */
  readonly slotMs: number;
  readonly memory: ProbeQualityMemory;
}

/** What is remembered of a probe between runs. */
export interface QualityState {
  /** After the newest reading. */
  readonly memory: ProbeQualityMemory;
  /** Before it: when a half of the newest reading comes later, the whole of it is judged again. */
  readonly before: ProbeQualityMemory;
}

export const freshQuality: QualityState = { memory: emptyProbeQualityMemory, before: emptyProbeQualityMemory };

/** Beginning of the slot that an instant lies in. */
export function slotOf(timeMs: number): number {
  return Math.floor(timeMs / SLOT_MS) * SLOT_MS;
}

/** The flags by now of the newest reading in a memory, or of the one before it. */
export function flagsAt(memory: ProbeQualityMemory, timeMs: number): FlagsAt {
  return {
    timeMs,
    temperatureFlag: flagAt(memory.temperature, timeMs),
    humidityFlag: flagAt(memory.humidity, timeMs),
  };
}

/** Takes readings newer than all in the memory it starts from, each whole and each newer than the one before. */
export class QualityRun {
  readonly #judged: FlagsAt[] = [];
  readonly #checkpoints: QualityCheckpoint[] = [];
  #state: QualityState;

  constructor(memory: ProbeQualityMemory) {
    this.#state = { memory, before: memory };
  }

  /** After the last reading taken. */
  get state(): QualityState {
    return this.#state;
  }

  /** Flags in order of time, from the reading before the first one taken. Those of the last may change with the next reading. */
  get judged(): readonly FlagsAt[] {
    return this.#judged;
  }

  /** Of the slots that began in this run. */
  get checkpoints(): readonly QualityCheckpoint[] {
    return this.#checkpoints;
  }

  /** True when a reading at this instant is the first of its slot. */
  beginsSlot(timeMs: number): boolean {
    const lastMs = this.#state.memory.timeMs;
    return lastMs === null || slotOf(lastMs) !== slotOf(timeMs);
  }

  add(sample: AirSample, limits: QualityLimits): void {
    const before = this.#state.memory;
    if (this.beginsSlot(sample.timeMs)) this.#checkpoints.push({ slotMs: slotOf(sample.timeMs), memory: before });
    const { memory, temperatureFlag, humidityFlag } = judgeReading(before, sample, limits);
    this.#state = { memory, before };
    if (before.timeMs !== null) {
      // The spike test judges a reading by the next one.
      this.#judged.splice(-1, 1, flagsAt(memory, before.timeMs));
    }
    this.#judged.push({ timeMs: sample.timeMs, temperatureFlag, humidityFlag });
  }
}
