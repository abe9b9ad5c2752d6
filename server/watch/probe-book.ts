// What the service knows of each probe right now: its row, its newest reading, the memory of its quality tests. A draft holds changes back
// until they are committed: a decision that could not be stored never happened.
import type { SetBack } from '../../shared/alarms/service/follow-outage.ts';
import { type Calibration, calibrate } from '../../shared/readings/calibration.ts';
import type { ProbeNow } from '../../shared/readings/chamber-climate.ts';
import { freshQuality, type QualityState } from '../../shared/readings/quality/quality-run.ts';
import type { Reading } from '../../shared/readings/reading.ts';
import type { Probe, Store, StoredCalibration } from '../store/store.ts';
import { isDatedAhead, MOST_AHEAD_MS } from './move-clock.ts';

export interface ProbeState {
  readonly probe: Probe;
  /** Raw, as it is stored. The newest of what was heard: what the store has after it was dated by a clock that has been set back since. */
  readonly newest: Reading | null;
  /** Up to here readings may be stored: after the newest one only when the clock was set back. */
  readonly storedToMs: number;
  /** What corrects it, in the order in which the entries begin. */
  readonly calibrations: readonly Calibration[];
  /** Memory of its quality tests; null after a restart until it is heard: then it is found again from the stored readings. */
  readonly quality: QualityState | null;
  /** From when silence counts: its placing, or the start of the service. */
  readonly watchedSinceMs: number;
  /** Readings from before are of the air of another place: the probe has been moved since. */
  readonly countsFromMs: number;
}

export interface ProbeBook {
  find(nodeId: string, address: string): ProbeState | undefined;
  byId(id: string): ProbeState | undefined;
  all(): Iterable<ProbeState>;
  /** Those that stand in a chamber, in the order of `all`. */
  inChamber(chamberId: string): ProbeState[];
  /** Those that stand in the house. */
  inHouse(): ProbeState[];
  put(state: ProbeState): void;
  nextNumber(): number;
}

/** Loads all probes with their newest readings. `startedMs`: silence is counted from here at the earliest. `setBack`: the clock was, before that. */
export async function openProbeBook(
  store: Store,
  startedMs: number,
  setBack: SetBack | null = null,
): Promise<ProbeBook> {
  const states = new Map<string, ProbeState>();
  const keyById = new Map<string, string>();
  // Every reading changes a state, and hardly ever where a probe stands: which keys stand where is found again after such a move only.
  let standing: Standing | null = null;
  let lastNumber = 0;
  const put = (state: ProbeState) => {
    const key = keyOf(state.probe.nodeId, state.probe.address);
    if (!isSamePlace(states.get(key), state)) standing = null;
    states.set(key, state);
    keyById.set(state.probe.id, key);
    lastNumber = Math.max(lastNumber, state.probe.number);
  };
  const histories = await store.calibrations.list();
  for (const probe of await store.probes.list()) {
    const stored = await store.readings.newest(probe.number);
    const isAhead = stored !== null && isDatedAhead(stored.timeMs, setBack, startedMs);
    const newest = isAhead ? await store.readings.newest(probe.number, startedMs + MOST_AHEAD_MS) : stored;
    put({
      probe,
      newest,
      storedToMs: stored?.timeMs ?? 0,
      calibrations: calibrationsOf(histories, probe.number),
      quality: newest === null ? freshQuality : null,
      watchedSinceMs: startedMs,
      countsFromMs: countsFrom(probe.placement, setBack, startedMs),
    });
  }
  const statesOf = (keys: readonly string[] = []) => keys.flatMap((key) => states.get(key) ?? []);
  const whereAllStand = () => {
    standing ??= sortByPlace(states);
    return standing;
  };
  return {
    find: (nodeId, address) => states.get(keyOf(nodeId, address)),
    byId: (id) => states.get(keyById.get(id) ?? ''),
    all: () => states.values(),
    inChamber: (chamberId) => statesOf(whereAllStand().byChamber.get(chamberId)),
    inHouse: () => statesOf(whereAllStand().house),
    put,
    nextNumber: () => lastNumber + 1,
  };
}

/** A probe that was placed by the clock before counts since it was set back. */
function countsFrom(placement: Probe['placement'], setBack: SetBack | null, nowMs: number): number {
  const fromMs = placement?.fromMs ?? 0;
  return setBack !== null && fromMs > nowMs ? Math.min(fromMs, setBack.atMs) : fromMs;
}

/**
 * The newest reading of a placed probe, calibrated, as the climate of a chamber is made from; null when it is out of service or has not been heard in
 * its place. What a probe said before it was placed for the first time counts: it stood there already.
 */
export function probeNow({ probe, newest, calibrations, countsFromMs }: ProbeState): ProbeNow | null {
  if (newest === null || probe.placement === null || probe.outOfService || newest.timeMs < countsFromMs) return null;
  const { timeMs, temperature, humidity, temperatureFlag, humidityFlag } = calibrate(newest, calibrations);
  const { id: probeId, silenceMs } = probe;
  return {
    probeId,
    place: probe.placement.place,
    timeMs,
    temperature,
    humidity,
    temperatureFlag,
    humidityFlag,
    silenceMs,
  };
}

/** The corrections of one probe out of the history of all, in the order in which they begin. */
export function calibrationsOf(histories: readonly StoredCalibration[], number: number): Calibration[] {
  return histories.filter(({ probe }) => probe === number).map(({ correction }) => correction);
}

/** Keys of the probes by where they stand. */
interface Standing {
  readonly byChamber: ReadonlyMap<string, readonly string[]>;
  readonly house: readonly string[];
}

function sortByPlace(states: ReadonlyMap<string, ProbeState>): Standing {
  const placed = [...states].flatMap(([key, { probe }]) =>
    probe.placement === null ? [] : { key, ...probe.placement },
  );
  const byChamber = new Map<string, string[]>();
  for (const { key, chamberId } of placed)
    if (chamberId !== null) byChamber.set(chamberId, [...(byChamber.get(chamberId) ?? []), key]);
  return { byChamber, house: placed.filter(({ place }) => place === 'house').map(({ key }) => key) };
}

function isSamePlace(known: ProbeState | undefined, next: ProbeState): boolean {
  return known !== undefined && known.probe.placement === next.probe.placement;
}

function keyOf(nodeId: string, address: string): string {
  return `${nodeId}/${address}`;
}
