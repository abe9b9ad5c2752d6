// The watch: scenes → reducer → effects. It decides and remembers; it stores through the caller's one transaction and sends nothing itself.

import { type Alarm, SERVICE_ID, SERVICE_NAME, type ServiceRuleId, serviceRuleIds } from '../../shared/alarms/alarm.ts';
import { standingLevel } from '../../shared/alarms/debounce.ts';
import { moveDelays } from '../../shared/alarms/move-delays.ts';
import { reduce, reduceService } from '../../shared/alarms/reduce.ts';
import type { Scene } from '../../shared/alarms/rules/rule.ts';
import { isCutOff, isSettling, noOutage } from '../../shared/alarms/service/follow-outage.ts';
import type { ServiceScene } from '../../shared/alarms/service/service-scene.ts';
import { type ChamberWatch, emptyWatch, type Reduction, type WatchEvent } from '../../shared/alarms/watch-state.ts';
import type { WhyNothing } from '../../shared/alarms/why-nothing.ts';
import { lookAhead } from '../../shared/forecast/heat-ahead.ts';
import { chamberClimate } from '../../shared/readings/chamber-climate.ts';
import type { Site } from '../site.ts';
import type { Commit, Store } from '../store/store.ts';
import { createHouseWatch } from './house-air.ts';
import { probeUnderClock } from './move-clock.ts';
import type { OutageBook } from './outage-book.ts';
import { type ProbeBook, type ProbeState, probeNow } from './probe-book.ts';
import { careOf } from './scene-care.ts';
import { openTeller, type Teller, type TellingParts } from './teller.ts';
import { followTrends, noTrends, type Trends } from './trends.ts';
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
  /** Judges the service itself, which is watched as one more place. */
  observeService(scene: ServiceScene): Decision;
  /** What was seen of the service last; null = not looked yet. */
  serviceScene(): ServiceScene | null;
  /** Rules about the service whose condition stands. */
  serviceStanding(): ServiceRuleId[];
  /** The machine's clock was moved: delays that run go on, and nothing that is watched lies in the future. */
  moveClock(byMs: number, nowMs: number): Decision;
  /** Reads a chamber anew from the store after somebody changed it or its batch. */
  reload(chamberId: string): Promise<void>;
  refreshHouse(nowMs: number): Promise<void>;
}

interface WatchParts {
  readonly store: Store;
  readonly site: Site;
  readonly probes: ProbeBook;
  readonly telling: TellingParts;
  /** Absent = readings can always come in, as in a replay. */
  readonly outage?: OutageBook;
}

/** Loads the watch as it was when the service stopped: alarms, pending delays, shelves. */
export async function openWatch(parts: WatchParts): Promise<Watch> {
  const { store, site, probes } = parts;
  const teller = await openTeller(store, parts.telling);
  const gap = () => parts.outage?.memory() ?? noOutage;
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
    const trends = chambers.get(chamberId)?.trends ?? noTrends;
    chambers.set(chamberId, { chamber, healing, watch, trends });
  };
  for (const { id } of await store.chambers.list()) await reload(id);
  let service = memories.get(SERVICE_ID) ?? emptyWatch(SERVICE_ID);
  let serviceScene: ServiceScene | null = null;

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
    const trends = followTrends(chamber.trends, climate, high);
    const scene = {
      nowMs,
      chamberId: chamber.chamber.id,
      batchId: chamber.healing?.batch.id ?? null,
      corridor,
      climate,
      probes: own.flatMap(sceneProbe),
      readings,
      ...(chamber.healing !== null && planned !== null && careOf(chamber.healing, planned, nowMs)),
      ahead: high === null ? null : lookAhead(trends.heat, high),
      isCutOff: isCutOff(gap()),
    };
    return { scene, trends };
  };

  const decide = (turns: readonly Turn[]): Decision => {
    const watches = [service, ...[...chambers.values()].map(({ watch }) => watch)];
    return makeDecision(turns, { teller, watches, isHeld: isSettling(gap()) });
  };

  const chamberTurn = (chamber: WatchedChamber, event: WatchEvent, trends: Trends): Turn => ({
    atMs: timeOf(event),
    reduction: reduce(chamber.watch, event),
    keep(watch) {
      const known = chambers.get(watch.chamberId);
      if (known !== undefined) chambers.set(watch.chamberId, { ...known, watch, trends });
    },
  });

  const serviceTurn = (event: WatchEvent<ServiceScene>): Turn => ({
    atMs: timeOf(event),
    reduction: reduceService(service, event),
    keep(watch) {
      service = watch;
    },
  });

  return {
    probes,
    chambers: () => [...chambers.values()],
    chamber: (id) => chambers.get(id),
    chamberName: (id) => (id === SERVICE_ID ? SERVICE_NAME : names.get(id)) ?? 'removed chamber',
    plan,
    scene: (chamber, all, nowMs) => look(chamber, all, nowMs).scene,
    house: () => houseWatch.mean(),
    observe(chamberIds, all, nowMs) {
      const known = [...new Set(chamberIds)].flatMap((id) => chambers.get(id) ?? []);
      const states = [...all];
      return decide(
        known.map((chamber) => {
          const { scene, trends } = look(chamber, states, nowMs);
          return chamberTurn(chamber, { type: 'observe', scene }, trends);
        }),
      );
    },
    act(chamberId, event) {
      if (chamberId === SERVICE_ID) return decide([serviceTurn(event)]);
      const chamber = chambers.get(chamberId);
      return decide(chamber === undefined ? [] : [chamberTurn(chamber, event, chamber.trends)]);
    },
    observeService(scene) {
      serviceScene = scene;
      return decide([serviceTurn({ type: 'observe', scene })]);
    },
    serviceScene: () => serviceScene,
    serviceStanding: () =>
      serviceRuleIds.filter((rule) =>
        Object.values(service.entries).some((entry) => entry.rule === rule && standingLevel(entry.memory) > 0),
      ),
    moveClock(byMs, nowMs) {
      for (const state of [...probes.all()]) probes.put(probeUnderClock(state, nowMs));
      const moved = [service, ...[...chambers.values()].map(({ watch }) => watch)].map((watch) => {
        const entries = moveDelays(watch, byMs);
        return {
          ...watch,
          entries: { ...watch.entries, ...Object.fromEntries(entries.map((one) => [one.key, one.entry])) },
          moved: entries,
        };
      });
      return {
        work: {
          entries: moved.flatMap(({ chamberId, moved: entries }) => entries.map((one) => ({ chamberId, ...one }))),
          changes: [],
          notices: [],
        },
        reason: null,
        apply() {
          for (const { chamberId, entries } of moved) {
            const known = chambers.get(chamberId);
            // The trend counts by time that has not passed.
            if (known !== undefined)
              chambers.set(chamberId, { ...known, watch: { chamberId, entries }, trends: noTrends });
            else service = { chamberId, entries };
          }
        },
      };
    },
    sirenFor: teller.sirenFor,
    reload,
    async refreshHouse(nowMs) {
      await houseWatch.refresh(probes.all(), nowMs);
    },
  };
}

/** What a look at a chamber shows, and what is remembered of its trends if the look is kept. */
interface Looked {
  readonly scene: Scene;
  readonly trends: Trends;
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
  /** What is not critical waits for one message about all of it. */
  readonly isHeld: boolean;
}

/** What one event has made of one place. */
interface Turn {
  readonly atMs: number;
  readonly reduction: Reduction;
  readonly keep: (state: ChamberWatch) => void;
}

function makeDecision(turns: readonly Turn[], { teller, watches, isHeld }: DecisionParts): Decision {
  const effects = turns.flatMap(({ reduction: { state, effects: all } }) =>
    all.map((effect) => ({ chamberId: state.chamberId, effect })),
  );
  const changes = effects.flatMap(({ effect }) => (effect.type === 'alarm-changed' ? [effect] : []));
  const entries = effects.flatMap(({ chamberId, effect }) =>
    effect.type === 'entry-changed' ? [{ chamberId, key: effect.key, entry: effect.entry }] : [],
  );
  const after = new Map(watches.map((watch) => [watch.chamberId, watch]));
  for (const { reduction } of turns) after.set(reduction.state.chamberId, reduction.state);
  const alarms = [...after.values()].flatMap(activeAlarms);
  const told = teller.decide({ changes, alarms, nowMs: turns[0]?.atMs ?? null, isHeld });
  const nothing = effects.flatMap(({ effect }) => (effect.type === 'nothing' ? [effect.reason] : []));
  return {
    work: { entries, changes, notices: told.notices },
    reason: nothing[0] ?? null,
    apply() {
      for (const { reduction, keep } of turns) keep(reduction.state);
      told.apply();
    },
  };
}

function activeAlarms({ entries }: ChamberWatch): Alarm[] {
  return Object.values(entries).flatMap(({ alarm }) => alarm ?? []);
}

/** When the turn is; events of one turn share it. */

function timeOf(event: WatchEvent | WatchEvent<ServiceScene>): number {
  return event.type === 'observe' ? event.scene.nowMs : event.nowMs;
}
