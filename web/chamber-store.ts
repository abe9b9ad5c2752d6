// The chambers as last heard, one signal each, so that a new value redraws one row and not sixty.
import { computed, type Signal, signal } from '@preact/signals';
import type { AlarmView } from '../shared/api/alarms.ts';
import type { ChamberView } from '../shared/api/chambers.ts';
import type { ProbeView } from '../shared/api/probes.ts';
import { MINUTE_MS } from '../shared/units.ts';
import { alarmRank, isOpen } from './chamber-state.ts';

/** Until the probes are known: how long a value may stand before it counts as old. */
const defaultSilenceMs = 10 * MINUTE_MS;

const chambers = new Map<string, Signal<ChamberView | undefined>>();

/** Undefined until the first list has come. */
export const chamberIds = signal<readonly string[] | undefined>(undefined);
export const probes = signal<readonly ProbeView[]>([]);

/** The signal of one chamber; its value is undefined while it is not known. */
export function chamberSignal(id: string): Signal<ChamberView | undefined> {
  const known = chambers.get(id);
  if (known !== undefined) return known;
  const made = signal<ChamberView | undefined>(undefined);
  chambers.set(id, made);
  return made;
}

export function putChamber(chamber: ChamberView): void {
  chamberSignal(chamber.id).value = chamber;
}

/** Takes the whole list anew; a chamber that is not in it any more is forgotten. */
export function putAllChambers(list: readonly ChamberView[]): void {
  const present = new Set(list.map((chamber) => chamber.id));
  for (const [id, known] of chambers) if (!present.has(id)) known.value = undefined;
  list.forEach(putChamber);
  chamberIds.value = list.map((chamber) => chamber.id);
}

/** Puts one alarm into its chamber, or takes it out when it is over. Returns whether it was not known there before. */
export function putAlarm(alarm: AlarmView): boolean {
  const target = chamberSignal(alarm.chamberId);
  const chamber = target.value;
  if (chamber === undefined) return true;
  const others = chamber.alarms.filter((known) => known.id !== alarm.id);
  const isNew = others.length === chamber.alarms.length;
  const alarms = alarm.state === 'normal' ? others : [...others, alarm];
  target.value = { ...chamber, alarms: alarms.sort((one, other) => alarmRank(one) - alarmRank(other)) };
  return isNew;
}

/** All chambers that are known, in the service's order. */
export const allChambers = computed<readonly ChamberView[]>(() =>
  (chamberIds.value ?? []).flatMap((id) => chamberSignal(id).value ?? []),
);

/** How many alarms nobody has acknowledged. */
export const openAlarmCount = computed(() =>
  allChambers.value.reduce((count, chamber) => count + chamber.alarms.filter(isOpen).length, 0),
);

const silences = computed(() => {
  const shortest = new Map<string, number>();
  for (const { chamberId, place, outOfService, silenceMinutes } of probes.value) {
    if (chamberId === null || place !== 'canopy' || outOfService) continue;
    const known = shortest.get(chamberId) ?? Number.POSITIVE_INFINITY;
    shortest.set(chamberId, Math.min(known, silenceMinutes * MINUTE_MS));
  }
  return shortest;
});

/** How old this chamber's climate may be before it is no longer fresh: the shortest silence of its canopy probes, ms. */
export function silenceMsOf(chamberId: string): number {
  return silences.value.get(chamberId) ?? defaultSilenceMs;
}
