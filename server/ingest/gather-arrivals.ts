// Decoded messages → what came of each probe, in order of time and each instant once. Nothing is judged here.
import { fourDecimals, type IncomingReading } from '../../shared/readings/reading.ts';
import type { ProbeState } from '../watch/probe-book.ts';
import type { ProbeDraft } from '../watch/probe-draft.ts';
import type { DecodedMessage } from './arrived-message.ts';

/** What came for one instant of a probe, by one message or by two. */
export interface Incoming {
  readonly timeMs: number;
  readonly temperature: number | null;
  readonly humidity: number | null;
  readonly receivedMs: number;
}

export interface Arrivals {
  readonly state: ProbeState;
  /** In order of time. */
  readonly readings: readonly Incoming[];
}

/** Finds or discovers the probe of each reading, in the order in which they came. */
export function gatherArrivals(decoded: readonly DecodedMessage[], draft: ProbeDraft): Arrivals[] {
  const byProbe = new Map<string, { state: ProbeState; readings: Map<number, Incoming> }>();
  for (const { admitted, message } of decoded) {
    for (const incoming of inTimeOrder(admitted)) {
      const state = draft.at(incoming.node, incoming.probe, message.arrivalMs);
      const known = byProbe.get(state.probe.id) ?? { state, readings: new Map<number, Incoming>() };
      byProbe.set(state.probe.id, known);
      const reading = asStored(incoming, message.arrivalMs);
      const same = known.readings.get(reading.timeMs);
      known.readings.set(reading.timeMs, same === undefined ? reading : complete(same, reading));
    }
  }
  return [...byProbe.values()].map(({ state, readings }) => ({ state, readings: inTimeOrder([...readings.values()]) }));
}

type Halves = Pick<Incoming, 'temperature' | 'humidity'>;

/** A known reading with what another of the same instant brings: only a missing half is taken over. */
export function complete<Known extends Halves>(known: Known, { temperature, humidity }: Halves): Known {
  return { ...known, temperature: known.temperature ?? temperature, humidity: known.humidity ?? humidity };
}

/** True when it completes the known reading of its instant, or there is none. */
export function bringsMore({ temperature, humidity }: Halves, known: Halves | undefined): boolean {
  if (known === undefined) return true;
  return (known.temperature === null && temperature !== null) || (known.humidity === null && humidity !== null);
}

/** Judged is what will be stored, to its last digit: judging the stored reading again must give the same. */
function asStored({ timeMs, temperature, humidity }: IncomingReading, receivedMs: number): Incoming {
  return { timeMs, temperature: fourDecimals(temperature), humidity: fourDecimals(humidity), receivedMs };
}

function inTimeOrder<Timed extends { readonly timeMs: number }>(list: readonly Timed[]): readonly Timed[] {
  return list.length < 2 ? list : [...list].sort((a, b) => a.timeMs - b.timeMs);
}
