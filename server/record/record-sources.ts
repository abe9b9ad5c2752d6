// Which probes belong to a batch's record: those that stood in its chamber, and in the house, while it was there.
import type { Batch } from '../../shared/healing/batch.ts';
import type { Placement, Probe, Store, StoredCalibration } from '../store/store.ts';
import type { ReadingSource } from './merge-readings.ts';

export interface ProbeSource extends ReadingSource {
  /** What the record calls the probe: unique within the store. */
  readonly label: string;
  readonly id: string;
  readonly node: string;
  readonly address: string;
  readonly place: Placement['place'];
  readonly silenceMs: number;
  /** The entries behind its calibrations, with who entered them. */
  readonly history: readonly StoredCalibration[];
  /** When it was taken away, or the end of the record. */
  readonly placedToMs: number;
}

/** The time a record covers: from opening the batch until it is finished, or until now. Both ends are included. */
export interface RecordWindow {
  readonly fromMs: number;
  readonly toMs: number;
}

/**
 * One source a placement, canopy first, then film, then house; each cut to the window. The record of a finished batch stands: a calibration
 * entered after that corrects the charts, and no record that may have been handed over already.
 */
export async function findSources(
  store: Pick<Store, 'probes' | 'calibrations'>,
  batch: Pick<Batch, 'chamberId' | 'finishedMs'>,
  { fromMs, toMs }: RecordWindow,
): Promise<ProbeSource[]> {
  const probes = await store.probes.list();
  const entered = (await store.calibrations.list()).filter(
    ({ enteredMs }) => enteredMs <= (batch.finishedMs ?? Number.MAX_SAFE_INTEGER),
  );
  // The store takes the end as not included.
  const inChamber = await store.probes.placements(batch.chamberId, fromMs, toMs + 1);
  const inHouse = await store.probes.placements(null, fromMs, toMs + 1);
  const sources = [...inChamber, ...inHouse].flatMap((placement) => {
    const probe = probes.find(({ number }) => number === placement.probe);
    if (probe === undefined) return [];
    const history = entered.filter((one) => one.probe === probe.number && one.correction.fromMs <= toMs);
    return [{ ...toSource(probe, placement, labelOf(probe, probes), { fromMs, toMs }), ...calibratedBy(history) }];
  });
  return places.flatMap((place) => sources.filter((source) => source.place === place));
}

const places = ['canopy', 'film', 'house'] as const;

/** The probe's name, with its id where names would not tell probes apart. */
export function labelOf(probe: Probe, all: readonly Probe[]): string {
  if (probe.name === '') return probe.id;
  const isShared = all.some((other) => other.number !== probe.number && other.name === probe.name);
  return isShared ? `${probe.name} (${probe.id})` : probe.name;
}

function calibratedBy(history: readonly StoredCalibration[]): Pick<ProbeSource, 'history' | 'calibrations'> {
  return { history, calibrations: history.map(({ correction }) => correction) };
}

function toSource(
  probe: Probe,
  placement: Placement,
  label: string,
  window: RecordWindow,
): Omit<ProbeSource, 'history' | 'calibrations'> {
  return {
    probe: probe.number,
    label,
    id: probe.id,
    node: probe.nodeId,
    address: probe.address,
    place: placement.place,
    silenceMs: probe.silenceMs,
    placedToMs: Math.min(placement.toMs ?? window.toMs, window.toMs),
    fromMs: Math.max(placement.fromMs, window.fromMs),
    toMs: Math.min(placement.lastMs ?? window.toMs, window.toMs),
  };
}
