// The chambers as last heard, one signal each, so that a new value redraws one row and not sixty.
import { computed, type Signal, signal } from '@preact/signals';
import type { AlarmView } from '../shared/api/alarms.ts';
import type { ChamberView } from '../shared/api/chambers.ts';
import { alarmRank, isOpen } from './alarm-order.ts';

const chambers = new Map<string, Signal<ChamberView | undefined>>();

/** Undefined until the first list has come. */
export const chamberIds = signal<readonly string[] | undefined>(undefined);

/** Alarms of the service itself, the worst first. */
export const serviceAlarms = signal<readonly AlarmView[]>([]);

/** The one of them that is worth a banner, if there is one: not what is over and taken, nor what waits on the list of alarms. */
export const worstServiceAlarm = computed<AlarmView | undefined>(
  () => serviceAlarms.value.filter((alarm) => (alarm.level > 0 || isOpen(alarm)) && alarm.priority !== 'low')[0],
);

function putServiceAlarm(alarm: AlarmView): boolean {
  const others = serviceAlarms.value.filter((known) => known.id !== alarm.id);
  const isNew = others.length === serviceAlarms.value.length;
  putServiceAlarms(alarm.state === 'normal' ? others : [...others, alarm]);
  return isNew;
}

export function putServiceAlarms(alarms: readonly AlarmView[]): void {
  serviceAlarms.value = [...alarms].sort((one, other) => alarmRank(one) - alarmRank(other));
}

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
  if (alarm.chamberId === null) return putServiceAlarm(alarm);
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
export const openAlarmCount = computed(
  () => [serviceAlarms.value, ...allChambers.value.map(({ alarms }) => alarms)].flat().filter(isOpen).length,
);

type Named = readonly (readonly [id: string, name: string])[];
let lastNames: Named = [];

/** The chambers by id and name; the same array until a chamber comes, goes or is renamed, so that no reading redraws a list of names. */
export const chamberNames = computed<Named>(() => {
  const names: Named = allChambers.value.map(({ id, name }) => [id, name]);
  if (JSON.stringify(names) !== JSON.stringify(lastNames)) lastNames = names;
  return lastNames;
});

/** True when a batch stands in one of the chambers. */
export const hasBatch = computed(() => allChambers.value.some(({ batch }) => batch !== null));
