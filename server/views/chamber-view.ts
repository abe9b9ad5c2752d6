// A chamber as it is sent to people: climate now, limits now, batch, what is due next, alarms worst first.

import { type ChamberRuleId, chamberRuleIds } from '../../shared/alarms/alarm.ts';
import type { Scene } from '../../shared/alarms/rules/rule.ts';
import { nameRule } from '../../shared/alarms/say-alarm.ts';
import type { Suppression } from '../../shared/alarms/suppression.ts';
import { type OutOfService, outOfServiceOf } from '../../shared/alarms/watch-state.ts';
import type { ChamberView, ClimateNow } from '../../shared/api/chambers.ts';
import { foreseeDryness } from '../../shared/forecast/dry-ahead.ts';
import type { MixtureMemory } from '../../shared/forecast/trend-mixture.ts';
import { healingDay, stageAt } from '../../shared/healing/batch-clock.ts';
import { checkStatus, type PlannedCheck } from '../../shared/healing/checks.ts';
import type { Band, Corridor } from '../../shared/healing/corridor.ts';
import { plainEnglish } from '../../shared/plain-english.ts';
import type { ChamberClimate } from '../../shared/readings/chamber-climate.ts';
import { DEFAULT_SILENCE_MS } from '../../shared/readings/silence.ts';
import { HOUR_MS, MINUTE_MS, utcText } from '../../shared/units.ts';
import { houseClimate } from '../watch/house-air.ts';
import type { Watch } from '../watch/watch.ts';
import type { BatchPlan, HealingNow, WatchedChamber } from '../watch/watched-chamber.ts';
import { viewFilm, viewUncertainty } from './air-certainty.ts';
import { timeText, viewAlarm, worstFirst } from './alarm-view.ts';
import { rounded } from './rounded.ts';

/** How long a missed check is put before what comes next. */
const MISSED_SHOWN_MS = 12 * HOUR_MS;

export function viewChamber(chamber: WatchedChamber, watch: Watch, nowMs: number): ChamberView {
  const plan = watch.plan(chamber, nowMs);
  const own = watch.probes.inChamber(chamber.chamber.id);
  const scene = watch.scene(chamber, own, nowMs);
  const code = chamber.healing?.batch.code ?? null;
  const alarms = Object.values(chamber.watch.entries).flatMap(({ alarm }) =>
    alarm === null ? [] : [viewAlarm(alarm, watch, nowMs, code)],
  );
  const house = houseClimate(watch.probes.inHouse(), nowMs, 0);
  return {
    id: chamber.chamber.id,
    name: chamber.chamber.name,
    climate: {
      ...viewClimate(scene.climate, scene.probes),
      ...viewUncertainty(scene.climate),
      film: viewFilm(scene.climate, own, house.temperature, nowMs),
    },
    house: { temperature: rounded(house.temperature, 3), humidity: rounded(house.humidity, 3) },
    limits: viewCorridor(scene.corridor),
    dryAhead: viewDryAhead(chamber.trends.dryness, scene.corridor, nowMs),
    batch: chamber.healing === null || plan === null ? null : briefBatch(chamber.healing, plan, nowMs),
    nextDue: chamber.healing === null || plan === null ? null : nextDue(chamber.healing, plan, nowMs),
    alarms: alarms.sort(worstFirst),
    suppression: viewSuppression(scene.suppression ?? null),
    outOfService: chamberRuleIds.flatMap((rule) => viewOutOfService(rule, outOfServiceOf(chamber.watch, rule))),
  };
}

function viewSuppression(suppression: Suppression | null): ChamberView['suppression'] {
  if (suppression === null) return null;
  return { cause: suppression.cause, until: utcText(suppression.untilMs), by: suppression.person };
}

function viewOutOfService(rule: ChamberRuleId, taken: OutOfService | null): ChamberView['outOfService'] {
  if (taken === null) return [];
  return [
    { rule, name: nameRule(rule, plainEnglish), by: taken.person, at: utcText(taken.atMs), reason: taken.reason },
  ];
}

function viewClimate(
  climate: ChamberClimate,
  probes: Scene['probes'],
): Omit<ClimateNow, 'film' | keyof ReturnType<typeof viewUncertainty>> {
  const canopy = probes.filter(({ place }) => place === 'canopy');
  const heardMs = canopy.flatMap(({ lastHeardMs }) => lastHeardMs ?? []);
  return {
    at: timeText(climate.timeMs),
    heardAt: timeText(heardMs.length === 0 ? null : Math.max(...heardMs)),
    temperature: rounded(climate.temperature, 3),
    humidity: rounded(climate.humidity, 3),
    vpdKpa: rounded(climate.vpdKpa, 4),
    dewPoint: rounded(climate.dewPoint, 3),
    hottest: rounded(climate.hottest, 3),
    coldest: rounded(climate.coldest, 3),
    driest: rounded(climate.driest, 3),
    silenceMinutes:
      Math.max(...canopy.map(({ silenceMs }) => silenceMs), 0) / MINUTE_MS || DEFAULT_SILENCE_MS / MINUTE_MS,
    healthyProbes: climate.healthyProbes,
    // Placed ones, heard or not: the climate knows of those that were heard.
    canopyProbes: canopy.length,
  };
}

function viewDryAhead(trend: MixtureMemory, corridor: Corridor | null, nowMs: number): ChamberView['dryAhead'] {
  const ahead = corridor === null ? null : foreseeDryness(trend, corridor.humidity.low, nowMs);
  if (ahead === null) return null;
  const instant = (minutes: number | null) =>
    minutes === null ? null : utcText(Math.round(ahead.asOfMs + minutes * MINUTE_MS));
  const limit = rounded(ahead.limit, 1) ?? ahead.limit;
  return { limit, at: instant(ahead.minutes), earliest: instant(ahead.low), latest: instant(ahead.high) };
}

function viewCorridor(corridor: Corridor | null): ChamberView['limits'] {
  if (corridor === null) return null;
  return { temperature: viewBand(corridor.temperature), humidity: viewBand(corridor.humidity) };
}

function viewBand({ lowLow, low, high, highHigh }: Band) {
  const whole = (value: number) => Math.round(value * 100) / 100;
  return { lowLow: rounded(lowLow, 2), low: whole(low), high: whole(high), highHigh: rounded(highHigh, 2) };
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

function nextDue({ answers, batch }: HealingNow, plan: BatchPlan, nowMs: number): ChamberView['nextDue'] {
  const answered = new Set(answers.map(({ checkId }) => checkId));
  const open = plan.checks.filter(({ checkId }) => !answered.has(checkId));
  const due = open.filter((check) => checkStatus(check, null, nowMs) === 'due');
  // A check missed an hour ago can still be made up for; one missed days ago must not hide the one to do.
  // What was overdue before the batch was entered is nobody's fault, and no alarm either.
  const sinceMs = Math.max(batch.enteredMs ?? batch.openedMs, nowMs - MISSED_SHOWN_MS);
  const missed = open.filter(({ overdueMs }) => overdueMs <= nowMs && overdueMs > sinceMs);
  const toCome = open.filter(({ dueMs }) => dueMs > nowMs);
  const next = due[0] ?? missed.at(-1) ?? toCome[0];
  return next === undefined ? null : viewDue(next, nowMs);
}

function viewDue(check: PlannedCheck, nowMs: number): ChamberView['nextDue'] {
  const { checkId, question, ifNo, dueMs } = check;
  const status = checkStatus(check, null, nowMs);
  return status === 'answered' ? null : { checkId, question, ifNo, dueAt: utcText(dueMs), status };
}
