// What a shape cannot say of the checks: that each has a moment, falls within the plan and can be told from the others.
import { SHORTEST_REPEAT_HOURS } from './checks.ts';
import type { PlanFault } from './plan-fault.ts';
import type { CheckPlan } from './profile.ts';
import type { CheckPart, ProfileParts } from './profile-parts.ts';
import type { StageName } from './stage-name.ts';

/** Faults of all checks of a profile. */
export function checkFaults(parts: ProfileParts): PlanFault[] {
  return parts.checks.flatMap((check, index) => [
    ...repeatedId(check, parts.checks.slice(0, index)),
    ...(check.plan === null
      ? []
      : [...momentFaults(check.plan, check.where, parts), ...repeatFaults(check.plan, check.where)]),
  ]);
}

function repeatedId({ where, id }: CheckPart, before: readonly CheckPart[]): PlanFault[] {
  if (id === null || !before.some((earlier) => earlier.id === id)) return [];
  return [{ where: `${where}/id`, kind: 'id-twice', id }];
}

function momentFaults({ afterHours, atStage }: CheckPlan, where: string, parts: ProfileParts): PlanFault[] {
  if (atStage === undefined) {
    if (afterHours === undefined) return [{ where, kind: 'no-moment' }];
    return lateFaults(afterHours, parts.endsAfterHours, 'plan', where);
  }
  const place = parts.stages.findIndex(({ stage }) => stage === atStage);
  if (place < 0) return [{ where: `${where}/atStage`, kind: 'no-stage', stage: atStage }];
  if (atStage === 'loading') return [];
  const beginsAt = parts.stages[place]?.afterHours ?? null;
  const endsAt = parts.stages[place + 1]?.afterHours ?? parts.endsAfterHours;
  const lengthHours = beginsAt === null || endsAt === null ? null : endsAt - beginsAt;
  return lateFaults(afterHours ?? 0, lengthHours, atStage, where);
}

function lateFaults(hours: number, lengthHours: number | null, of: StageName | 'plan', where: string): PlanFault[] {
  if (lengthHours === null || lengthHours <= 0 || hours < lengthHours) return [];
  return [{ where: `${where}/afterHours`, kind: 'too-late', of, lengthHours, hours }];
}

function repeatFaults({ afterHours = 0, everyHours, untilHours }: CheckPlan, where: string): PlanFault[] {
  const faults: PlanFault[] = [];
  if (everyHours !== undefined && everyHours < SHORTEST_REPEAT_HOURS) {
    faults.push({ where: `${where}/everyHours`, kind: 'repeat-too-short', least: SHORTEST_REPEAT_HOURS });
  }
  if (untilHours !== undefined && everyHours === undefined) {
    faults.push({ where: `${where}/untilHours`, kind: 'until-without-repeat' });
  }
  if (untilHours !== undefined && untilHours < afterHours) {
    faults.push({ where: `${where}/untilHours`, kind: 'until-before-first', hours: afterHours });
  }
  return faults;
}
