// Readings that came after newer ones, or for a probe whose memory a restart has ended: they are judged together with the stored ones around
// them, in order of time, so that values and flags are what they would be had everything come in order. It ends where the tests remember what they
// remembered before, at the latest with the last stored reading. That one need not be the probe's newest: readings dated by a clock that has been
// set back since lie ahead of it, and must not make the probe look fresh.
import { emptyProbeQualityMemory } from '../../shared/readings/quality/judge-reading.ts';
import { type QualityLimits, qualityLimitsAt } from '../../shared/readings/quality/quality-limits.ts';
import { type QualityCheckpoint, slotOf } from '../../shared/readings/quality/quality-run.ts';
import type { Reading } from '../../shared/readings/reading.ts';
import { HOUR_MS } from '../../shared/units.ts';
import type { Placement, Store } from '../store/store.ts';
import type { ProbeState } from '../watch/probe-book.ts';
import { type Arrivals, bringsMore, type Incoming } from './gather-arrivals.ts';
import { type JudgedProbe, ProbeRun } from './probe-run.ts';

/** What is asked of the stored past. */
export type Past = Pick<Store, 'readings' | 'probes'>;

/** Where no memory is stored (none was kept when these readings came), the tests start this long before: twice the slowest of them. */
const WARM_UP_MS = 24 * HOUR_MS;

/** Those that are not stored already; a buffer sent twice is the commonest late message. */
export async function leaveOutStored(past: Past, { state, readings }: Arrivals): Promise<readonly Incoming[]> {
  const [first, last] = [readings[0], readings.at(-1)];
  if (first === undefined || last === undefined) return [];
  const stored = new Map<number, Reading>();
  for await (const reading of past.readings.range(state.probe.number, first.timeMs, last.timeMs))
    stored.set(reading.timeMs, reading);
  return readings.filter((incoming) => bringsMore(incoming, stored.get(incoming.timeMs)));
}

/** Judges them among the stored readings, those of the future included. `readings` are in order of time, and none is stored. */
export async function judgeAnew(past: Past, state: ProbeState, readings: readonly Incoming[]): Promise<JudgedProbe> {
  const { number } = state.probe;
  const fromMs = Math.min(readings[0]?.timeMs ?? Number.MAX_SAFE_INTEGER, newestToReach(state));
  const checkpoints = await past.readings.checkpoints(number, fromMs);
  const start = checkpoints.find(({ slotMs }) => slotMs <= fromMs);
  const memory = start?.memory ?? emptyProbeQualityMemory;
  const run = new ProbeRun(memory, newestOf(state, readings), placeLimits(await past.probes.placementsOf(number)));
  const queue = [...readings].reverse();
  const startMs = start === undefined ? fromMs - WARM_UP_MS : (memory.timeMs ?? start.slotMs);
  for await (const stored of past.readings.range(number, startMs, Number.MAX_SAFE_INTEGER)) {
    for (let next = queue.at(-1); next !== undefined && next.timeMs < stored.timeMs; next = queue.at(-1)) {
      run.take(null, next);
      queue.pop();
    }
    const completing = queue.at(-1)?.timeMs === stored.timeMs ? (queue.pop() ?? null) : null;
    if (stored.timeMs === memory.timeMs) {
      run.know(stored);
      continue;
    }
    const isAsBefore = queue.length === 0 && completing === null && remembersTheSame(run, stored, checkpoints);
    run.take(stored, completing);
    if (isAsBefore && state.quality !== null) return run.result(state);
  }
  for (const incoming of queue.reverse()) run.take(null, incoming);
  return run.result(state);
}

/** When the probe was heard last, these included. */
function newestOf({ newest }: ProbeState, readings: readonly Incoming[]): number | null {
  const [knownMs, comeMs] = [newest?.timeMs ?? null, readings.at(-1)?.timeMs ?? null];
  return knownMs === null || comeMs === null ? (knownMs ?? comeMs) : Math.max(knownMs, comeMs);
}

/** After a restart the memory is to be found again, so the run has to start before the newest reading and reach it. */
function newestToReach({ quality, newest }: ProbeState): number {
  return quality === null && newest !== null ? newest.timeMs : Number.MAX_SAFE_INTEGER;
}

function remembersTheSame(run: ProbeRun, { timeMs }: Reading, checkpoints: readonly QualityCheckpoint[]): boolean {
  if (!run.beginsSlot(timeMs)) return false;
  const then = checkpoints.find(({ slotMs }) => slotMs === slotOf(timeMs));
  return then !== undefined && JSON.stringify(then.memory) === JSON.stringify(run.memory);
}

/** The limits of the place where the probe stood at an instant; not placed then = as in the canopy. */
function placeLimits(placements: readonly Placement[]): (timeMs: number) => QualityLimits {
  return (timeMs) => {
    const stood = placements.find(
      ({ fromMs, lastMs }) => fromMs <= timeMs && timeMs <= (lastMs ?? Number.MAX_SAFE_INTEGER),
    );
    return qualityLimitsAt(stood?.place ?? null);
  };
}
