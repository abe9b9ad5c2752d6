// Decoded messages → readings with flags, on a draft of the probe book. In whatever order readings come, stored values and flags end up as if they
// had come in order of time.
import { LATE_AFTER_MS } from '../../shared/readings/silence.ts';
import type { Commit } from '../store/store.ts';
import type { ProbeState } from '../watch/probe-book.ts';
import type { ProbeDraft } from '../watch/probe-draft.ts';
import type { DecodedMessage } from './arrived-message.ts';
import { type Arrivals, gatherArrivals } from './gather-arrivals.ts';
import { judgeAnew, leaveOutStored, type Past } from './judge-anew.ts';
import { isInTurn, judgeInTurn, leaveOutNewest } from './judge-in-turn.ts';
import type { JudgedProbe } from './probe-run.ts';

export interface JudgedArrivals extends Required<Pick<Commit, 'readings' | 'revised' | 'checkpoints'>> {
  /** Chambers whose climate may have changed by a reading that is not late, or by one that makes the newest good or bad. */
  readonly chamberIds: ReadonlySet<string>;
}

/** Finds or discovers the probe of each reading and judges the readings, together with stored ones where they came late. */
export async function judgeArrivals(
  decoded: readonly DecodedMessage[],
  draft: ProbeDraft,
  past: Past,
): Promise<JudgedArrivals> {
  const judged: JudgedProbe[] = [];
  const chamberIds = new Set<string>();
  for (const arrivals of gatherArrivals(decoded, draft)) {
    const one = await judgeProbe(arrivals, past);
    draft.put(one.next);
    judged.push(one);
    const chamberId = arrivals.state.probe.placement?.chamberId;
    if (chamberId && changesClimate(arrivals, one.next)) chamberIds.add(chamberId);
  }
  return {
    readings: judged.flatMap(({ readings }) => readings),
    revised: judged.flatMap(({ revised }) => revised),
    checkpoints: judged.flatMap(({ checkpoints }) => checkpoints),
    chamberIds,
  };
}

async function judgeProbe(arrivals: Arrivals, past: Past): Promise<JudgedProbe> {
  const { state } = arrivals;
  const readings = isInTurn(arrivals) ? leaveOutNewest(arrivals) : await leaveOutStored(past, arrivals);
  if (readings.length === 0) return { next: state, readings: [], revised: [], checkpoints: [] };
  const { quality } = state;
  if (quality !== null && isInTurn({ state, readings })) return judgeInTurn({ ...state, quality }, readings);
  return judgeAnew(past, state, readings);
}

function changesClimate({ state, readings }: Arrivals, { newest }: ProbeState): boolean {
  if (readings.some(({ timeMs, receivedMs }) => receivedMs - timeMs <= LATE_AFTER_MS)) return true;
  if (newest === null || newest.timeMs !== state.newest?.timeMs) return false;
  return (['temperature', 'humidity', 'temperatureFlag', 'humidityFlag'] as const).some(
    (part) => newest[part] !== state.newest?.[part],
  );
}
