// Faults of a profile while it is being written: a document of the right form whose numbers may be missing (NaN) and whose texts may be empty.
// It finds a fault exactly where the shape of a stored profile would be refused, and carries none of the shape's code into the browser.
import type { PlanFault } from './plan-fault.ts';
import type { CheckPlan, Limit, LimitEnd, LimitSet, ProfileDocument, StagePlan } from './profile.ts';
import type { ProfileParts } from './profile-parts.ts';
import { ruleFaults } from './rule-faults.ts';

/** Every fault of a draft: its fields, and the rules as far as the fields can be read. */
export function draftFaults(draft: ProfileDocument): PlanFault[] {
  return [...fieldFaults(draft), ...ruleFaults(partsOf(draft))];
}

function partsOf(draft: ProfileDocument): ProfileParts {
  return {
    stages: draft.stages.map((plan, index) => ({
      where: `/stages/${index}`,
      stage: plan.stage,
      afterHours: readable(plan.afterHours),
      hasNotBefore: plan.notBefore !== undefined,
      temperature: readableSet(plan.temperature, `/stages/${index}/temperature`),
      humidity: readableSet(plan.humidity, `/stages/${index}/humidity`),
    })),
    checks: draft.checks.map((plan, index) => {
      const where = `/checks/${index}`;
      return { where, id: plan.id, plan: checkFields(plan, where).length === 0 ? plan : null };
    }),
    endsAfterHours: readable(draft.endsAfterHours),
  };
}

function readable(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

function readableSet(set: LimitSet, where: string): LimitSet | null {
  return setFields(set, where).length === 0 ? set : null;
}

function fieldFaults(draft: ProfileDocument): PlanFault[] {
  const { grace } = draft;
  return [
    ...text(draft.name, '/name', 1, 80),
    ...text(draft.crop, '/crop', 1, 80),
    ...text(draft.note, '/note', 0, 1000),
    ...above(grace.temperaturePerHour, '/grace/temperaturePerHour', 0),
    ...above(grace.humidityPerHour, '/grace/humidityPerHour', 0),
    ...text(grace.basis, '/grace/basis', 1, 200),
    ...above(draft.silenceMinutes, '/silenceMinutes', 0, 240),
    ...above(draft.endsAfterHours, '/endsAfterHours', 0, 2000),
    ...timeOfDay(draft.endsNotBefore, '/endsNotBefore'),
    ...draft.stages.flatMap((plan, index) => stageFields(plan, `/stages/${index}`)),
    ...draft.checks.flatMap((plan, index) => checkFields(plan, `/checks/${index}`)),
  ];
}

function stageFields(plan: StagePlan, where: string): PlanFault[] {
  const { vpdKpa } = plan;
  return [
    ...bounds(plan.afterHours, `${where}/afterHours`, 0, 2000),
    ...timeOfDay(plan.notBefore, `${where}/notBefore`),
    ...setFields(plan.temperature, `${where}/temperature`),
    ...setFields(plan.humidity, `${where}/humidity`),
    ...(vpdKpa === undefined ? [] : above(vpdKpa.high, `${where}/vpdKpa/high`, 0, 5)),
    ...(vpdKpa === undefined ? [] : text(vpdKpa.basis, `${where}/vpdKpa/basis`, 1, 200)),
  ];
}

function setFields(set: LimitSet, where: string): PlanFault[] {
  return (['lowLow', 'low', 'high', 'highHigh'] as const).flatMap((name) => {
    const limit = set[name];
    return limit === undefined ? [] : limitFields(limit, `${where}/${name}`);
  });
}

function limitFields(limit: Limit, where: string): PlanFault[] {
  const basis = text(limit.basis, `${where}/basis`, 1, 200);
  if (limit.shape === 'constant') return [...number(limit.value, `${where}/value`), ...basis];
  if (limit.shape === 'levels') {
    const values = limit.values.flatMap((end, index) => endFields(end, `${where}/values/${index}`));
    return [...values, ...basis];
  }
  const steps = limit.shape === 'stairs' ? whole(limit.steps, `${where}/steps`, 1, 48) : [];
  return [...number(limit.from, `${where}/from`), ...endFields(limit.to, `${where}/to`), ...steps, ...basis];
}

function endFields(end: LimitEnd, where: string): PlanFault[] {
  if (typeof end === 'number') return number(end, where);
  return [...number(end.houseOffset, `${where}/houseOffset`), ...number(end.fallback, `${where}/fallback`)];
}

function checkFields(plan: CheckPlan, where: string): PlanFault[] {
  const optional = (value: number | undefined, place: string, judge: typeof bounds) =>
    value === undefined ? [] : judge(value, `${where}/${place}`, 0, 2000);
  return [
    ...(/^[a-z][a-z0-9-]{0,40}$/.test(plan.id) ? [] : [{ where: `${where}/id`, kind: 'check-id' } as const]),
    ...text(plan.question, `${where}/question`, 3, 200),
    ...text(plan.ifNo, `${where}/ifNo`, 3, 300),
    ...optional(plan.afterHours, 'afterHours', bounds),
    ...timeOfDay(plan.notBefore, `${where}/notBefore`),
    ...optional(plan.everyHours, 'everyHours', above),
    ...optional(plan.untilHours, 'untilHours', above),
    ...above(plan.overdueMinutes, `${where}/overdueMinutes`, 0, 1440),
    ...text(plan.basis, `${where}/basis`, 1, 200),
  ];
}

function number(value: number, where: string): PlanFault[] {
  return Number.isFinite(value) ? [] : [{ where, kind: 'no-number' }];
}

function bounds(value: number, where: string, least: number, most: number): PlanFault[] {
  if (!Number.isFinite(value)) return number(value, where);
  return value >= least && value <= most ? [] : [{ where, kind: 'bounds', least, most }];
}

function above(value: number, where: string, limit: number, most = Number.POSITIVE_INFINITY): PlanFault[] {
  if (!Number.isFinite(value)) return number(value, where);
  if (value <= limit) return [{ where, kind: 'not-above', limit }];
  return value <= most ? [] : [{ where, kind: 'bounds', least: limit, most }];
}

function whole(value: number, where: string, least: number, most: number): PlanFault[] {
  if (!Number.isInteger(value)) return [{ where, kind: 'no-whole-number' }];
  return bounds(value, where, least, most);
}

function text(value: string, where: string, least: number, most: number): PlanFault[] {
  return value.length >= least && value.length <= most ? [] : [{ where, kind: 'text-length', least, most }];
}

function timeOfDay(value: string | undefined, where: string): PlanFault[] {
  return value === undefined || /^([01]\d|2[0-3]):[0-5]\d$/.test(value) ? [] : [{ where, kind: 'time-of-day' }];
}
