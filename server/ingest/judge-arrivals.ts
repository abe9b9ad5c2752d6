// Decoded messages → readings with flags, on a draft of the probe book.
import { judgeReading } from '../../shared/readings/quality/judge-reading.ts';
import { qualityLimitsAt } from '../../shared/readings/quality/quality-limits.ts';
import { FLAG, type IncomingReading, type Reading } from '../../shared/readings/reading.ts';
import { LATE_AFTER_MS } from '../../shared/readings/silence.ts';
import type { Commit } from '../store/store.ts';
import type { ProbeState } from '../watch/probe-book.ts';
import type { ProbeDraft } from '../watch/probe-draft.ts';
import type { DecodedMessage } from './arrived-message.ts';

type JudgedRow = NonNullable<Commit['readings']>[number];
type RevisedRow = NonNullable<Commit['revised']>[number];

export interface JudgedArrivals {
  readonly readings: readonly JudgedRow[];
  readonly revised: readonly RevisedRow[];
  /** Chambers whose climate may have changed by a reading that is not late. */
  readonly chamberIds: ReadonlySet<string>;
}

/** Finds or discovers the probe of each reading and judges the readings in order of time. */
export function judgeArrivals(decoded: readonly DecodedMessage[], draft: ProbeDraft): JudgedArrivals {
  const readings: JudgedRow[] = [];
  const revised: RevisedRow[] = [];
  const chamberIds = new Set<string>();
  for (const { admitted, message } of decoded) {
    for (const incoming of inTimeOrder(admitted)) {
      const state = draft.at(incoming.node, incoming.probe, message.arrivalMs);
      const { reading, next, revision } = judgeOne(state, incoming, message.arrivalMs);
      draft.put(next);
      readings.push(reading);
      if (revision !== null) revised.push(revision);
      if (!reading.late && state.probe.placement?.chamberId) chamberIds.add(state.probe.placement.chamberId);
    }
  }
  return { readings, revised, chamberIds };
}

function judgeOne(state: ProbeState, incoming: IncomingReading, receivedMs: number) {
  const { probe } = state;
  const { timeMs, temperature, humidity } = incoming;
  const judged = judgeReading(
    state.quality,
    { timeMs, temperature, humidity },
    qualityLimitsAt(probe.placement?.place ?? null),
  );
  const late = receivedMs - timeMs > LATE_AFTER_MS;
  const { temperatureFlag, humidityFlag } = judged;
  const reading = {
    probe: probe.number,
    timeMs,
    temperature,
    humidity,
    temperatureFlag,
    humidityFlag,
    receivedMs,
    late,
  };
  const next = { ...state, quality: judged.memory, newest: newer(state.newest, reading) };
  return { reading, next, revision: judged.revised === null ? null : { probe: probe.number, ...judged.revised } };
}

/** The newest reading after another one came; a second message for the same instant completes it. */
function newer(known: Reading | null, reading: Reading): Reading {
  if (known === null || reading.timeMs > known.timeMs) return reading;
  if (reading.timeMs < known.timeMs) return known;
  return {
    ...known,
    temperature: known.temperature ?? reading.temperature,
    humidity: known.humidity ?? reading.humidity,
    temperatureFlag: known.temperatureFlag === FLAG.missing ? reading.temperatureFlag : known.temperatureFlag,
    humidityFlag: known.humidityFlag === FLAG.missing ? reading.humidityFlag : known.humidityFlag,
  };
}

function inTimeOrder(admitted: readonly IncomingReading[]): readonly IncomingReading[] {
  return admitted.length < 2 ? admitted : [...admitted].sort((a, b) => a.timeMs - b.timeMs);
}
