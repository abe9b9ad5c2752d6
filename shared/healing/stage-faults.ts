// What a shape cannot say of the stages: which there must be, in which order, and at which hours.
import type { Fault } from '../problem.ts';
import { stageNames } from './profile.ts';
import type { ProfileParts, StagePart } from './profile-parts.ts';

/** Faults of the sequence of stages and of the end of the plan. */
export function stageFaults({ stages, endsAfterHours }: ProfileParts): Fault[] {
  return [
    ...missingClosed(stages),
    ...stages.flatMap((stage, index) => placeFaults(stage, stages.slice(0, index))),
    ...stages.flatMap((stage, index) => hourFaults(stage, stages.slice(0, index))),
    ...endFaults(stages, endsAfterHours),
  ];
}

function missingClosed(stages: readonly StagePart[]): Fault[] {
  if (stages.some(({ stage }) => stage === 'closed')) return [];
  return [{ where: '/stages', reason: 'has no stage "closed": healing begins with it, so add one at 0 hours' }];
}

function placeFaults({ where, stage }: StagePart, before: readonly StagePart[]): Fault[] {
  if (stage === null) return [];
  const place = `${where}/stage`;
  if (before.some((earlier) => earlier.stage === stage)) {
    return [{ where: place, reason: `the stage "${stage}" stands twice: keep one of them` }];
  }
  const rank = stageNames.indexOf(stage);
  const overtaken = before.find((earlier) => earlier.stage !== null && stageNames.indexOf(earlier.stage) > rank);
  if (overtaken === undefined) return [];
  return [
    { where: place, reason: `"${stage}" stands after "${overtaken.stage}": the order is ${stageNames.join(', ')}` },
  ];
}

function hourFaults(stage: StagePart, before: readonly StagePart[]): Fault[] {
  const { where, afterHours } = stage;
  if (stage.stage === 'loading' || stage.stage === 'closed') return actFaults(stage);
  const latest = latestHours(before);
  if (afterHours === null || afterHours > latest) return [];
  const reason = `must be later than the stages before it, up to ${latest} hours; it says ${afterHours}`;
  return [{ where: `${where}/afterHours`, reason }];
}

/** Loading and closed begin when a person opens the batch and closes the chamber, not at an hour of the plan. */
function actFaults({ where, stage, afterHours, hasNotBefore }: StagePart): Fault[] {
  const faults: Fault[] = [];
  if (afterHours !== null && afterHours !== 0) {
    faults.push({
      where: `${where}/afterHours`,
      reason: `must be 0 for "${stage}": a person begins it, not the clock`,
    });
  }
  if (hasNotBefore) {
    faults.push({
      where: `${where}/notBefore`,
      reason: `"${stage}" begins when a person acts: remove the time of day`,
    });
  }
  return faults;
}

function endFaults(stages: readonly StagePart[], endsAfterHours: number | null): Fault[] {
  const latest = latestHours(stages);
  if (endsAfterHours === null || endsAfterHours > latest) return [];
  const reason = `must be later than the last stage, which begins at ${latest} hours; it says ${endsAfterHours}`;
  return [{ where: '/endsAfterHours', reason }];
}

function latestHours(stages: readonly StagePart[]): number {
  return Math.max(0, ...stages.map(({ afterHours }) => afterHours ?? 0));
}
