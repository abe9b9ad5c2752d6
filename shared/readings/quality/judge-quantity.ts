// All tests of one quantity of one probe but the wet-sensor test, run on one sample. Constant memory, plain JSON.
import { FLAG, type Flag } from '../reading.ts';
import { aggregateFlags } from './aggregate-flags.ts';
import { emptyFlatLineMemory, type FlatLineMemory, flatLine } from './flat-line.ts';
import { grossRange } from './gross-range.ts';
import type { QuantityLimits } from './quality-limits.ts';
import { emptyRateMemory, type RateMemory, rateOfChange } from './rate-of-change.ts';
import type { Measured, Tested } from './sample.ts';
import { emptySpikeMemory, type SpikeMemory, spike } from './spike.ts';

/** A sample that was judged, and the flag it has by now. */
export interface Judged {
  readonly timeMs: number;
  readonly flag: Flag;
}

export interface QuantityMemory {
  readonly spike: SpikeMemory;
  readonly rateOfChange: RateMemory;
  readonly flatLine: FlatLineMemory;
  readonly last: Judged | null;
  readonly beforeLast: Judged | null;
}

export const emptyQuantityMemory: QuantityMemory = {
  spike: emptySpikeMemory,
  rateOfChange: emptyRateMemory,
  flatLine: emptyFlatLineMemory,
  last: null,
  beforeLast: null,
};

/**
 * Judges one measured value, newer than all before, and adds `otherFlag` (what a test of more than this quantity found). `previousMs` is the
 * time of the probe's previous sample: when this quantity was missing there, the spike test starts afresh. In the memory the sample before
 * becomes `beforeLast`, with the spike test's word added to its flag.
 */
export function judgeQuantity(
  old: QuantityMemory,
  { timeMs, value }: Measured,
  previousMs: number | null,
  limits: QuantityLimits,
  otherFlag: Flag,
): Tested<QuantityMemory> {
  const gross = grossRange(value, limits.grossRange);
  // What the sensor cannot have measured must not make its neighbours look like spikes or jumps.
  const usable = { timeMs, value: gross === FLAG.fail ? null : value };
  const isConsecutive = old.last !== null && old.last.timeMs === previousMs;
  const spiked = spike(isConsecutive ? old.spike : emptySpikeMemory, usable, limits.spike);
  const rated = rateOfChange(rateMemoryAfter(old, spiked.flag), usable, limits.rateOfChange);
  const flat = flatLine(old.flatLine, usable, limits.flatLine);
  const flag = aggregateFlags([gross, rated.flag, flat.flag, otherFlag]);
  return {
    memory: {
      spike: spiked.memory,
      rateOfChange: rated.memory,
      flatLine: flat.memory,
      last: { timeMs, flag },
      beforeLast: addSpike(old.last, spiked.flag),
    },
    flag,
  };
}

/** A value just found to be a spike is no base for a rate: the good reading after it is compared with the one before it. */
function rateMemoryAfter(old: QuantityMemory, spikeFlag: Flag | null): RateMemory {
  if (spikeFlag !== FLAG.suspect && spikeFlag !== FLAG.fail) return old.rateOfChange;
  const beforeSpike = old.spike.recent.at(-2);
  if (beforeSpike === undefined || beforeSpike.value === null) return old.rateOfChange;
  return { last: { timeMs: beforeSpike.timeMs, value: beforeSpike.value } };
}

function addSpike(judged: Judged | null, spikeFlag: Flag | null): Judged | null {
  if (judged === null || spikeFlag === null) return judged;
  return { timeMs: judged.timeMs, flag: aggregateFlags([judged.flag, spikeFlag]) };
}

/** The flag this quantity has, as far as is remembered, at `timeMs`; missing when it was not measured then. */
export function flagAt(memory: QuantityMemory, timeMs: number): Flag {
  if (memory.last?.timeMs === timeMs) return memory.last.flag;
  return memory.beforeLast?.timeMs === timeMs ? memory.beforeLast.flag : FLAG.missing;
}
