// A chamber as it is sent to people: climate now, limits now, batch, what is due next, alarms worst first.
import type { ChamberView, ClimateNow } from '../../shared/api/chambers.ts';
import { healingDay, stageAt } from '../../shared/healing/batch-clock.ts';
import { checkStatus, type PlannedCheck } from '../../shared/healing/checks.ts';
import type { ChamberClimate } from '../../shared/readings/chamber-climate.ts';
import { utcText } from '../../shared/units.ts';
import { houseClimate } from '../watch/house-air.ts';
import type { Watch } from '../watch/watch.ts';
import type { BatchPlan, HealingNow, WatchedChamber } from '../watch/watched-chamber.ts';
import { timeText, viewAlarm, worstFirst } from './alarm-view.ts';

export function viewChamber(chamber: WatchedChamber, watch: Watch, nowMs: number): ChamberView {
  const plan = watch.plan(chamber, nowMs);
  const scene = watch.scene(chamber, watch.probes.all(), nowMs);
  const code = chamber.healing?.batch.code ?? null;
  const alarms = Object.values(chamber.watch.entries).flatMap(({ alarm }) =>
    alarm === null ? [] : [viewAlarm(alarm, watch, nowMs, code)],
  );
  const house = houseClimate(watch.probes.all(), nowMs, 0);
  return {
    id: chamber.chamber.id,
    name: chamber.chamber.name,
    climate: viewClimate(scene.climate),
    house: { temperature: house.temperature, humidity: house.humidity },
    limits: scene.corridor,
    batch: chamber.healing === null || plan === null ? null : briefBatch(chamber.healing, plan, nowMs),
    nextDue: chamber.healing === null || plan === null ? null : nextDue(chamber.healing, plan, nowMs),
    alarms: alarms.sort(worstFirst),
  };
}

export function viewClimate(climate: ChamberClimate): ClimateNow {
  const { temperature, humidity, vpdKpa, dewPoint, hottest, driest, healthyProbes, canopyProbes } = climate;
  return {
    at: timeText(climate.timeMs),
    ...{ temperature, humidity, vpdKpa, dewPoint, hottest, driest, healthyProbes, canopyProbes },
  };
}

export function briefBatch({ batch, gapPercent }: HealingNow, plan: BatchPlan, nowMs: number) {
  const { id, code, scion, rootstock, trays, plants, holds } = batch;
  // A finished batch stays at the day on which it ended.
  const atMs = batch.finishedMs ?? nowMs;
  return {
    ...{ id, code, scion, rootstock, trays, plants, gapPercent },
    openedAt: utcText(batch.openedMs),
    closedAt: timeText(batch.closedMs),
    endsAt: timeText(plan.spans.at(-1)?.endMs ?? null),
    healingDay: batch.closedMs === null ? 0 : healingDay(batch.closedMs, atMs),
    stage: stageAt(plan.spans, nowMs)?.stage ?? null,
    onHold: holds.some(({ toMs }) => toMs === null),
  };
}

function nextDue({ answers }: HealingNow, plan: BatchPlan, nowMs: number): ChamberView['nextDue'] {
  const answered = new Set(answers.map(({ checkId }) => checkId));
  const open = plan.checks.filter(({ checkId }) => !answered.has(checkId));
  const status = (check: PlannedCheck) => checkStatus(check, null, nowMs);
  // What is due now comes before what is overdue: a check missed days ago must not hide the one to do.
  const next =
    open.find((one) => status(one) === 'due') ?? open.find((one) => status(one) === 'to-come') ?? open.at(-1);
  if (next === undefined) return null;
  const state = status(next);
  return state === 'answered'
    ? null
    : { checkId: next.checkId, question: next.question, dueAt: utcText(next.dueMs), status: state };
}
