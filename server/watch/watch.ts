// The watch: scenes → reducer → effects. It decides and remembers; it stores through the caller's one transaction and sends nothing itself.

import { type Alarm, SERVICE_ID, type ServiceRuleId, serviceRuleIds } from '../../shared/alarms/alarm.ts';
import { standingLevel } from '../../shared/alarms/debounce.ts';
import { reduce, reduceService } from '../../shared/alarms/reduce.ts';
import type { Scene } from '../../shared/alarms/rules/rule.ts';
import { isCutOff, isSettling, noOutage } from '../../shared/alarms/service/follow-outage.ts';
import type { ServiceScene } from '../../shared/alarms/service/service-scene.ts';
import { emptyWatch, type WatchEvent } from '../../shared/alarms/watch-state.ts';
import type { Site } from '../site.ts';
import type { Store } from '../store/store.ts';
import { openChamberBook } from './chamber-book.ts';
import { type Decision, makeDecision, type Turn } from './decision.ts';
import { createHouseWatch } from './house-air.ts';
import { lookAtChamber } from './look-at-chamber.ts';
import { moveWatches, probeUnderClock } from './move-clock.ts';
import type { OutageBook } from './outage-book.ts';
import type { ProbeBook, ProbeState } from './probe-book.ts';
import { openTeller, type TellingParts } from './teller.ts';
import { noTrends, type Trends } from './trends.ts';
import { type BatchPlan, createPlanCache, type WatchedChamber } from './watched-chamber.ts';

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
  const memories = new Map((await store.alarms.watches()).map((watch) => [watch.chamberId, watch]));
  const chambers = await openChamberBook(store, memories);
  let service = memories.get(SERVICE_ID) ?? emptyWatch(SERVICE_ID);
  let serviceScene: ServiceScene | null = null;
  const watches = () => [service, ...chambers.all().map(({ watch }) => watch)];

  const plan = ({ healing }: WatchedChamber, nowMs: number) =>
    healing === null ? null : planOf(healing, site.current().zone, houseWatch.mean(), nowMs);

  const look = (chamber: WatchedChamber, all: Iterable<ProbeState>, nowMs: number) => {
    const { altitudeM } = site.current();
    const known = { plan: plan(chamber, nowMs), isCutOff: isCutOff(gap()) };
    return lookAtChamber(chamber, { ...known, probes: all, nowMs, altitudeM });
  };

  const decide = (turns: readonly Turn[]): Decision =>
    makeDecision(turns, { teller, watches: watches(), isHeld: isSettling(gap()) });

  const chamberTurn = (chamber: WatchedChamber, event: WatchEvent, trends: Trends): Turn => ({
    atMs: timeOf(event),
    reduction: reduce(chamber.watch, event),
    keep: (watch) => chambers.keep(watch, trends),
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
    chambers: chambers.all,
    chamber: chambers.get,
    chamberName: chambers.name,
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
      const moved = moveWatches(watches(), byMs);
      return {
        work: moved.work,
        reason: null,
        apply() {
          for (const watch of moved.watches)
            if (watch.chamberId === SERVICE_ID) service = watch;
            // The trend counts by time that has not passed.
            else chambers.keep(watch, noTrends);
        },
      };
    },
    sirenFor: teller.sirenFor,
    reload: chambers.reload,
    async refreshHouse(nowMs) {
      await houseWatch.refresh(probes.all(), nowMs);
    },
  };
}

/** When the turn is, ms. */
function timeOf(event: WatchEvent | WatchEvent<ServiceScene>): number {
  return event.type === 'observe' ? event.scene.nowMs : event.nowMs;
}
