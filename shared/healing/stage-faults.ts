// What a shape cannot say of the stages: which there must be, in which order, and at which hours.
import type { PlanFault } from './plan-fault.ts';
import type { ProfileParts, StagePart } from './profile-parts.ts';
import { stageNames } from './stage-name.ts';

/** Faults of the sequence of stages and of the end of the plan. */
export function stageFaults({ stages, endsAfterHours }: ProfileParts): PlanFault[] {
  return [
    ...missingClosed(stages),
    ...stages.flatMap((stage, index) => placeFaults(stage, stages.slice(0, index))),
    ...stages.flatMap((stage, index) => hourFaults(stage, stages.slice(0, index))),
    ...endFaults(stages, endsAfterHours),
  ];
}

function missingClosed(stages: readonly StagePart[]): PlanFault[] {
  if (stages.some(({ stage }) => stage === 'closed')) return [];
  return [{ where: '/stages', kind: 'no-closed' }];
}

function placeFaults({ where, stage }: StagePart, before: readonly StagePart[]): PlanFault[] {
  if (stage === null) return [];
  const place = `${where}/stage`;
  if (before.some((earlier) => earlier.stage === stage)) {
    return [{ where: place, kind: 'stage-twice', stage }];
  }
  const rank = stageNames.indexOf(stage);
  const overtaken = before.find((earlier) => earlier.stage !== null && stageNames.indexOf(earlier.stage) > rank);
  if (overtaken === undefined || overtaken.stage === null) return [];
  return [{ where: place, kind: 'stage-order', stage, after: overtaken.stage }];
}

function hourFaults(stage: StagePart, before: readonly StagePart[]): PlanFault[] {
  const { where, afterHours } = stage;
  if (stage.stage === 'loading' || stage.stage === 'closed') return actFaults(stage);
  const latest = latestHours(before);
  if (afterHours === null || afterHours > latest) return [];
  return [{ where: `${where}/afterHours`, kind: 'stage-hours', latest, hours: afterHours }];
}

/** Loading and closed begin when a person opens the batch and closes the chamber, not at an hour of the plan. */
function actFaults({ where, stage, afterHours, hasNotBefore }: StagePart): PlanFault[] {
  if (stage === null) return [];
  const faults: PlanFault[] = [];
  if (afterHours !== null && afterHours !== 0)
    faults.push({ where: `${where}/afterHours`, kind: 'stage-not-zero', stage });
  if (hasNotBefore) faults.push({ where: `${where}/notBefore`, kind: 'stage-time-of-day', stage });
  return faults;
}

function endFaults(stages: readonly StagePart[], endsAfterHours: number | null): PlanFault[] {
  const latest = latestHours(stages);
  if (endsAfterHours === null || endsAfterHours > latest) return [];
  return [{ where: '/endsAfterHours', kind: 'end-hours', latest, hours: endsAfterHours }];
}

function latestHours(stages: readonly StagePart[]): number {
  return Math.max(0, ...stages.map(({ afterHours }) => afterHours ?? 0));
}
