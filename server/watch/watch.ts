// The watch: scenes → reducer → effects. It decides and remembers; it stores through the caller's one transaction and sends nothing itself.

import type { Alarm } from '../../shared/alarms/alarm.ts';
import { reduce } from '../../shared/alarms/reduce.ts';
import type { Scene } from '../../shared/alarms/rules/rule.ts';
import { type ChamberWatch, emptyWatch, type WatchEvent } from '../../shared/alarms/watch-state.ts';
import type { WhyNothing } from '../../shared/alarms/why-nothing.ts';
import { followHeat, type HeatMemory, lookAhead, noHeatMemory } from '../../shared/forecast/heat-ahead.ts';
import { type ChamberClimate, chamberClimate } from '../../shared/readings/chamber-climate.ts';
import type { Site } from '../site.ts';
import type { Commit, Store } from '../store/store.ts';
import { createHouseWatch } from './house-air.ts';
import { type ProbeBook, type ProbeState, probeNow } from './probe-book.ts';
import { careOf } from './scene-care.ts';
import { openTeller, type Teller, type TellingParts } from './teller.ts';
import { type BatchPlan, createPlanCache, loadHealing, type WatchedChamber } from './watched-chamber.ts';

export type WatchWork = NonNullable<Commit['watch']>;

/** What a turn decided. `work` is stored first; only then `apply` makes it true in memory. */
export interface Decision {
  readonly work: WatchWork;
  /** Why nothing happened, when an act had no effect. */
  readonly reason: WhyNothing | null;
  apply(): void;
}

export interface Watch {
  readonly probes: ProbeBook;
  chambers(): WatchedChamber[];
  chamber(id: string): WatchedChamber | undefined;
  /** Of a chamber in use or retired; past batches and alarms name it. */
  chamberName(id: string): string;
  plan(chamber: WatchedChamber, nowMs: number): BatchPlan | null;
  scene(chamber: WatchedChamber, probes: Iterable<ProbeState>, nowMs: number): Scene;
  house(): { temperature: number | null; humidity: number | null };
  /** Judges chambers by the probes as given. */
  observe(chamberIds: Iterable<string>, probes: Iterable<ProbeState>, nowMs: number): Decision;
  act(chamberId: string, event: Exclude<WatchEvent, { type: 'observe' }>): Decision;
  /** Alarms that nobody has taken for so long that the siren sounds for them, the worst first. */
  sirenFor(): readonly Alarm[];
  /** Reads a chamber anew from the store after somebody changed it or its batch. */
  reload(chamberId: string): Promise<void>;
  refreshHouse(nowMs: number): Promise<void>;
}

interface WatchParts {
  readonly store: Store;
  readonly site: Site;
  readonly probes: ProbeBook;
  readonly telling: TellingParts;
}

/** Loads the watch as it was when the service stopped: alarms, pending delays, shelves. */
export async function openWatch(parts: WatchParts): Promise<Watch> {
  const { store, site, probes } = parts;
  const teller = await openTeller(store, parts.telling);
  const houseWatch = createHouseWatch(store);
  const planOf = createPlanCache();
  const chambers = new Map<string, WatchedChamber>();
  const memories = new Map((await store.alarms.watches()).map((watch) => [watch.chamberId, watch]));

  const names = new Map((await store.chambers.listWithRetired()).map(({ id, name }) => [id, name]));
  const reload = async (chamberId: string) => {
    const chamber = (await store.chambers.list()).find(({ id }) => id === chamberId);
    if (chamber !== undefined) names.set(chamber.id, chamber.name);
    if (chamber === undefined) return void chambers.delete(chamberId);
    const batch = (await store.batches.open()).find((one) => one.chamberId === chamberId);
    const healing = batch === undefined ? null : await loadHealing(store, batch);
    const watch = chambers.get(chamberId)?.watch ?? memories.get(chamberId) ?? emptyWatch(chamberId);
    const heat = chambers.get(chamberId)?.heat ?? noHeatMemory;
    chambers.set(chamberId, { chamber, healing, watch, heat });
  };
  for (const { id } of await store.chambers.list()) await reload(id);

  const plan = ({ healing }: WatchedChamber, nowMs: number) =>
    healing === null ? null : planOf(healing, site.current().zone, houseWatch.mean(), nowMs);

  const look = (chamber: WatchedChamber, all: Iterable<ProbeState>, nowMs: number): Looked => {
    const own = [...all].filter(
      ({ probe }) => probe.placement?.chamberId === chamber.chamber.id && !probe.outOfService,
    );
    const readings = own.flatMap((state) => probeNow(state) ?? []);
    const planned = plan(chamber, nowMs);
    const corridor = planned?.corridorAt(nowMs) ?? null;
    const climate = chamberClimate(readings, nowMs, site.current().altitudeM);
    const high = corridor?.temperature.high ?? null;
    const heat = heatAfter(chamber.heat, climate, high);
    const scene = {
      nowMs,
      chamberId: chamber.chamber.id,
      batchId: chamber.healing?.batch.id ?? null,
      corridor,
      climate,
      probes: own.flatMap(sceneProbe),
      readings,
      ...(chamber.healing !== null && planned !== null && careOf(chamber.healing, planned, nowMs)),
      ahead: high === null ? null : lookAhead(heat, high),
    };
    return { scene, heat };
  };

  const decide = (events: readonly Turn[]): Decision =>
    makeDecision(events, { teller, keep, watches: [...chambers.values()].map(({ watch }) => watch) });

  const keep = (watch: ChamberWatch, heat: HeatMemory) => {
    const known = chambers.get(watch.chamberId);
    if (known !== undefined) chambers.set(watch.chamberId, { ...known, watch, heat });
  };

  return {
    probes,
    chambers: () => [...chambers.values()],
    chamber: (id) => chambers.get(id),
    chamberName: (id) => names.get(id) ?? 'removed chamber',
    plan,
    scene: (chamber, all, nowMs) => look(chamber, all, nowMs).scene,
    house: () => houseWatch.mean(),
    observe(chamberIds, all, nowMs) {
      const known = [...new Set(chamberIds)].flatMap((id) => chambers.get(id) ?? []);
      const states = [...all];
      return decide(
        known.map((chamber) => {
          const { scene, heat } = look(chamber, states, nowMs);
          return { chamber, event: { type: 'observe', scene }, heat };
        }),
      );
    },
    act(chamberId, event) {
      const chamber = chambers.get(chamberId);
      return decide(chamber === undefined ? [] : [{ chamber, event, heat: chamber.heat }]);
    },
    sirenFor: teller.sirenFor,
    reload,
    async refreshHouse(nowMs) {
      await houseWatch.refresh(probes.all(), nowMs);
    },
  };
}

/** What a look at a chamber shows, and what is remembered of its heat if the look is kept. */
interface Looked {
  readonly scene: Scene;
  readonly heat: HeatMemory;
}

function heatAfter(memory: HeatMemory, { timeMs, hottest }: ChamberClimate, high: number | null): HeatMemory {
  return timeMs === null || hottest === null ? memory : followHeat(memory, { timeMs, value: hottest }, high);
}

function sceneProbe({ probe, newest, watchedSinceMs }: ProbeState): Scene['probes'] {
  if (probe.placement === null) return [];
  const { id: probeId, silenceMs } = probe;
  const sinceMs = Math.max(watchedSinceMs, probe.placement.fromMs);
  return [
    { probeId, place: probe.placement.place, lastHeardMs: newest?.timeMs ?? null, watchedSinceMs: sinceMs, silenceMs },
  ];
}

interface DecisionParts {
  readonly teller: Teller;
  /** Everything that is watched, as it is before the turn. */
  readonly watches: readonly ChamberWatch[];
  readonly keep: (watch: ChamberWatch, heat: HeatMemory) => void;
}

/** One event of one chamber. */
interface Turn {
  readonly chamber: WatchedChamber;
  readonly event: WatchEvent;
  readonly heat: HeatMemory;
}

function makeDecision(events: readonly Turn[], { teller, watches, keep }: DecisionParts): Decision {
  const reductions = events.map(({ chamber, event, heat }) => ({ ...reduce(chamber.watch, event), heat }));
  const effects = reductions.flatMap(({ state, effects: all }) =>
    all.map((effect) => ({ chamberId: state.chamberId, effect })),
  );
  const changes = effects.flatMap(({ effect }) => (effect.type === 'alarm-changed' ? [effect] : []));
  const entries = effects.flatMap(({ chamberId, effect }) =>
    effect.type === 'entry-changed' ? [{ chamberId, key: effect.key, entry: effect.entry }] : [],
  );
  const after = new Map(watches.map((watch) => [watch.chamberId, watch]));
  for (const { state } of reductions) after.set(state.chamberId, state);
  const alarms = [...after.values()].flatMap(activeAlarms);
  const told = teller.decide({ changes, alarms, nowMs: timeOf(events), isHeld: false });
  const nothing = effects.flatMap(({ effect }) => (effect.type === 'nothing' ? [effect.reason] : []));
  return {
    work: { entries, changes, notices: told.notices },
    reason: nothing[0] ?? null,
    apply() {
      for (const { state, heat } of reductions) keep(state, heat);
      told.apply();
    },
  };
}

function activeAlarms({ entries }: ChamberWatch): Alarm[] {
  return Object.values(entries).flatMap(({ alarm }) => alarm ?? []);
}

/** When the turn is; events of one turn share it. */
function timeOf([turn]: readonly Turn[]): number | null {
  if (turn === undefined) return null;
  return turn.event.type === 'observe' ? turn.event.scene.nowMs : turn.event.nowMs;
}
