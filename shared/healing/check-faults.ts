// What a shape cannot say of the checks: that each has a moment, falls within the plan and can be told from the others.
import type { Fault } from '../problem.ts';
import { SHORTEST_REPEAT_HOURS } from './checks.ts';
import type { CheckPlan } from './profile.ts';
import type { CheckPart, ProfileParts } from './profile-parts.ts';

/** Faults of all checks of a profile. */
export function checkFaults(parts: ProfileParts): Fault[] {
  return parts.checks.flatMap((check, index) => [
    ...repeatedId(check, parts.checks.slice(0, index)),
    ...(check.plan === null
      ? []
      : [...momentFaults(check.plan, check.where, parts), ...repeatFaults(check.plan, check.where)]),
  ]);
}

function repeatedId({ where, id }: CheckPart, before: readonly CheckPart[]): Fault[] {
  if (id === null || !before.some((earlier) => earlier.id === id)) return [];
  return [{ where: `${where}/id`, reason: `the id "${id}" stands twice: give each check its own` }];
}

function momentFaults({ afterHours, atStage }: CheckPlan, where: string, parts: ProfileParts): Fault[] {
  if (atStage === undefined) {
    if (afterHours === undefined) return [{ where, reason: 'has no moment: give afterHours, atStage, or both' }];
    return lateFaults(afterHours, parts.endsAfterHours, 'the plan', where);
  }
  const place = parts.stages.findIndex(({ stage }) => stage === atStage);
  if (place < 0) return [{ where: `${where}/atStage`, reason: `the plan has no stage "${atStage}"` }];
  if (atStage === 'loading') return [];
  const beginsAt = parts.stages[place]?.afterHours ?? null;
  const endsAt = parts.stages[place + 1]?.afterHours ?? parts.endsAfterHours;
  const lengthHours = beginsAt === null || endsAt === null ? null : endsAt - beginsAt;
  return lateFaults(afterHours ?? 0, lengthHours, `the stage "${atStage}"`, where);
}

function lateFaults(afterHours: number, lengthHours: number | null, what: string, where: string): Fault[] {
  if (lengthHours === null || lengthHours <= 0 || afterHours < lengthHours) return [];
  const reason = `must be earlier than the end of ${what}, ${lengthHours} hours after its beginning; it says ${afterHours}`;
  return [{ where: `${where}/afterHours`, reason }];
}

function repeatFaults({ afterHours = 0, everyHours, untilHours }: CheckPlan, where: string): Fault[] {
  const faults: Fault[] = [];
  if (everyHours !== undefined && everyHours < SHORTEST_REPEAT_HOURS) {
    faults.push({ where: `${where}/everyHours`, reason: `must be at least ${SHORTEST_REPEAT_HOURS} hours` });
  }
  if (untilHours !== undefined && everyHours === undefined) {
    faults.push({
      where: `${where}/untilHours`,
      reason: 'ends a repeat that is not there: give everyHours, or remove it',
    });
  }
  if (untilHours !== undefined && untilHours < afterHours) {
    faults.push({ where: `${where}/untilHours`, reason: `must not be before afterHours, which is ${afterHours}` });
  }
  return faults;
}
