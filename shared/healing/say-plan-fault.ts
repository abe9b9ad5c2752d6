// A fault of a plan in an English sentence that says what to change, for the operator's commands and the API.
import type { Fault } from '../problem.ts';
import type { PlanFault } from './plan-fault.ts';
import { stageNames } from './stage-name.ts';

const unit = { temperature: '°C', humidity: '%RH' } as const;

/** The fault with its place and its reason. */
export function sayPlanFault(fault: PlanFault): Fault {
  return { where: fault.where, reason: reasonOf(fault) };
}

function reasonOf(fault: PlanFault): string {
  switch (fault.kind) {
    case 'no-closed':
      return 'has no stage "closed": healing begins with it, so add one at 0 hours';
    case 'stage-twice':
      return `the stage "${fault.stage}" stands twice: keep one of them`;
    case 'stage-order':
      return `"${fault.stage}" stands after "${fault.after}": the order is ${stageNames.join(', ')}`;
    case 'stage-hours':
      return `must be later than the stages before it, up to ${fault.latest} hours; it says ${fault.hours}`;
    case 'stage-not-zero':
      return `must be 0 for "${fault.stage}": a person begins it, not the clock`;
    case 'stage-time-of-day':
      return `"${fault.stage}" begins when a person acts: remove the time of day`;
    case 'end-hours':
      return `must be later than the last stage, which begins at ${fault.latest} hours; it says ${fault.hours}`;
    case 'crossing':
      return `${fault.lower} (${fault.below}) is above ${fault.upper} (${fault.above}) ${fault.percent} % of the way through the stage`;
    case 'house-crossing':
      return `${fault.lower} ends ${fault.by} above ${fault.upper}, both counted from house air`;
    case 'out-of-reach':
      return `${fault.value} is not between ${fault.least} and ${fault.most} ${unit[fault.quantity]}`;
    default:
      return checkReason(fault);
  }
}

type LimitKind = 'crossing' | 'house-crossing' | 'out-of-reach';
type StageKind =
  | 'no-closed'
  | 'stage-twice'
  | 'stage-order'
  | 'stage-hours'
  | 'stage-not-zero'
  | 'stage-time-of-day'
  | 'end-hours';

function checkReason(fault: Exclude<PlanFault, { kind: LimitKind | StageKind }>): string {
  switch (fault.kind) {
    case 'id-twice':
      return `the id "${fault.id}" stands twice: give each check its own`;
    case 'no-moment':
      return 'has no moment: give afterHours, atStage, or both';
    case 'no-stage':
      return `the plan has no stage "${fault.stage}"`;
    case 'too-late': {
      const what = fault.of === 'plan' ? 'the plan' : `the stage "${fault.of}"`;
      return `must be earlier than the end of ${what}, ${fault.lengthHours} hours after its beginning; it says ${fault.hours}`;
    }
    case 'repeat-too-short':
      return `must be at least ${fault.least} hours`;
    case 'until-without-repeat':
      return 'ends a repeat that is not there: give everyHours, or remove it';
    case 'until-before-first':
      return `must not be before afterHours, which is ${fault.hours}`;
    default:
      return fieldReason(fault);
  }
}

type FieldKind = 'no-number' | 'no-whole-number' | 'bounds' | 'not-above' | 'text-length' | 'time-of-day' | 'check-id';

function fieldReason(fault: Extract<PlanFault, { kind: FieldKind }>): string {
  switch (fault.kind) {
    case 'no-number':
      return 'must be a number';
    case 'no-whole-number':
      return 'must be a whole number';
    case 'bounds':
      return `must be between ${fault.least} and ${fault.most}`;
    case 'not-above':
      return `must be above ${fault.limit}`;
    case 'text-length':
      return `must be text of ${fault.least} to ${fault.most} characters`;
    case 'time-of-day':
      return 'cannot be read: write a time of day as HH:MM, for example 07:00';
    case 'check-id':
      return 'use lower-case letters, digits and dashes';
  }
}
