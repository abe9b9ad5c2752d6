// The invented nursery of `npm run demo`, as data: four tents at different healing days, one about to overheat.
// Every name in it is made up and says so; nothing here may name a real person, variety or company.
import type { Place } from '../../shared/api/probes.ts';
import { MINUTE_MS, SECOND_MS } from '../../shared/units.ts';
import { planCrew, type Scenario } from './crew.ts';
import { type DemoLogEntry, writeDemoLog } from './demo-log.ts';
import { chooseDemoZone } from './demo-zone.ts';
import { timeOfDayBack } from './local-time.ts';
import { planOverheat } from './plan-overheat.ts';

interface DemoProbe {
  readonly address: string;
  readonly name: string;
  readonly place: Place;
}

interface DemoBatch {
  readonly code: string;
  readonly scion: string;
  readonly rootstock: string;
  readonly method: string;
  readonly trays: number;
  readonly plants: number;
  readonly openedMs: number;
  readonly closedMs: number;
}

export interface DemoChamber {
  readonly name: string;
  readonly node: string;
  /** First and second canopy probe, then perhaps one under the film. */
  readonly probes: readonly DemoProbe[];
  readonly batch: DemoBatch;
  readonly log: readonly DemoLogEntry[];
  readonly seed: number;
  readonly scenario: Scenario;
}

export interface DemoNursery {
  readonly name: string;
  readonly note: string;
  readonly zone: string;
  readonly people: readonly { readonly name: string; readonly role: 'manager' | 'crew' }[];
  readonly weatherSeed: number;
  readonly house: { readonly node: string; readonly probe: DemoProbe };
  readonly chambers: readonly DemoChamber[];
}

/** How long after the start of the demo the hot tent passes its limit; the alarm's delay comes on top. */
const UNTIL_HOT_MS = 20 * SECOND_MS;
const WEATHER_SEED = 4711;
const CREW = ['Demo crew A', 'Demo crew B'] as const;
const METHOD = 'clip graft, 45°';

/** One tent, described by what differs. It was closed in an afternoon, `daysBack` calendar days ago. */
interface TentOutline {
  readonly number: number;
  readonly daysBack: number;
  readonly closedAt: string;
  readonly loadingHours: number;
  readonly scion: string;
  readonly rootstock: string;
  readonly trays: number;
  readonly plants: number;
  readonly filmProbe: boolean;
  readonly overheats: boolean;
}

// Healing days at the start of the demo, whatever the hour: 2, 4, 6 (venting) and 7 (its first day open).
// biome-ignore format: a table is read in columns
const outlines: readonly TentOutline[] = [
  { number: 1, daysBack: 2, closedAt: '14:40', loadingHours: 5, scion: 'S-21', rootstock: 'R-7', trays: 24, plants: 2496, filmProbe: true, overheats: true },
  { number: 2, daysBack: 4, closedAt: '15:10', loadingHours: 6, scion: 'S-14', rootstock: 'R-7', trays: 30, plants: 3120, filmProbe: false, overheats: false },
  { number: 3, daysBack: 6, closedAt: '15:30', loadingHours: 6, scion: 'S-21', rootstock: 'R-3', trays: 28, plants: 2912, filmProbe: true, overheats: false },
  { number: 4, daysBack: 7, closedAt: '14:50', loadingHours: 4, scion: 'S-9', rootstock: 'R-3', trays: 18, plants: 1872, filmProbe: false, overheats: false },
];

/** The nursery as it stands at `nowMs`. Pure: the same instant gives the same nursery. */
export function describeDemoNursery(nowMs: number): DemoNursery {
  const zone = chooseDemoZone(nowMs);
  return {
    name: 'Demo nursery Lindenkamp (invented)',
    note: 'Demo data: nursery, people, varieties and readings are made up; the climate comes from a simulation.',
    zone,
    people: [{ name: 'Demo manager', role: 'manager' }, ...CREW.map((name) => ({ name, role: 'crew' }) as const)],
    weatherSeed: WEATHER_SEED,
    house: { node: 'demo-house', probe: { address: 'house', name: 'House air', place: 'house' } },
    chambers: outlines.map((outline) => describeChamber(outline, zone, nowMs)),
  };
}

function describeChamber(outline: TentOutline, zone: string, nowMs: number): DemoChamber {
  const closedMs = timeOfDayBack(nowMs, outline.daysBack, outline.closedAt, zone);
  const { filmProbe, number } = outline;
  const seed = 100 + number;
  return {
    name: `Tent ${number}`,
    node: `demo-tent-${number}`,
    probes: describeProbes(filmProbe),
    batch: describeBatch(outline, closedMs),
    log: writeDemoLog(planCrew(closedMs, zone), nowMs, CREW),
    seed,
    scenario: outline.overheats
      ? planOverheat({ seed, weatherSeed: WEATHER_SEED, zone, closedMs, filmProbe }, nowMs, UNTIL_HOT_MS)
      : { kind: 'steady' },
  };
}

function describeProbes(filmProbe: boolean): DemoProbe[] {
  const canopy: DemoProbe[] = [
    { address: 'canopy-1', name: 'Canopy, middle', place: 'canopy' },
    { address: 'canopy-2', name: 'Canopy, door end', place: 'canopy' },
  ];
  return filmProbe ? [...canopy, { address: 'film', name: 'Under the film', place: 'film' }] : canopy;
}

function describeBatch(outline: TentOutline, closedMs: number): DemoBatch {
  const { scion, rootstock, trays, plants } = outline;
  const openedMs = closedMs - outline.loadingHours * 60 * MINUTE_MS;
  return { code: `DEMO-${outline.number}`, scion, rootstock, method: METHOD, trays, plants, openedMs, closedMs };
}
