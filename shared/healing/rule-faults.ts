// The rules of a plan that a shape cannot say, all of them. Pure and without the shape's checks, so that the page can ask at each keystroke.
import { checkFaults } from './check-faults.ts';
import { limitFaults } from './limit-faults.ts';
import type { PlanFault } from './plan-fault.ts';
import type { ProfileParts } from './profile-parts.ts';
import { stageFaults } from './stage-faults.ts';

/** Every fault of the parts that can be read, never only the first. */
export function ruleFaults(parts: ProfileParts): PlanFault[] {
  return [...stageFaults(parts), ...parts.stages.flatMap(limitFaults), ...checkFaults(parts)];
}
