// A fault of a plan in one sentence that says what to change.
import type { Fault } from '../problem.ts';
import type { SharedWords } from '../words/shared-words.ts';
import type { PlanFault } from './plan-fault.ts';
import { stageNames } from './stage-name.ts';

type FaultWords = SharedWords['faults'];
type Sayings = {
  readonly [K in PlanFault['kind']]: (fault: Extract<PlanFault, { kind: K }>, say: FaultWords) => string;
};

const unit = { temperature: '°C', humidity: '%RH' } as const;

const sayings: Sayings = {
  'no-closed': (_, say) => say.noClosed,
  'stage-twice': ({ stage }, say) => say.stageTwice(stage),
  'stage-order': ({ stage, after }, say) => say.stageOrder(stage, after, stageNames.join(', ')),
  'stage-hours': ({ latest, hours }, say) => say.laterThanStages(latest, hours),
  'stage-not-zero': ({ stage }, say) => say.zeroHours(stage),
  'stage-time-of-day': ({ stage }, say) => say.noTimeOfDay(stage),
  'end-hours': ({ latest, hours }, say) => say.endAfterStages(latest, hours),
  'id-twice': ({ id }, say) => say.idTwice(id),
  'no-moment': (_, say) => say.noMoment,
  'no-stage': ({ stage }, say) => say.noSuchStage(stage),
  'too-late': ({ of, lengthHours, hours }, say) =>
    say.tooLate(of === 'plan' ? say.endOfPlan : say.endOfStage(of), lengthHours, hours),
  'repeat-too-short': ({ least }, say) => say.repeatTooShort(least),
  'until-without-repeat': (_, say) => say.endsNoRepeat,
  'until-before-first': ({ hours }, say) => say.endsBeforeBegin(hours),
  'out-of-reach': ({ value, least, most, quantity }, say) => say.outOfReach(value, least, most, unit[quantity]),
  crossing: ({ lower, below, upper, above, percent }, say) => say.crossing(lower, below, upper, above, percent),
  'house-crossing': ({ lower, by, upper }, say) => say.houseCrossing(lower, by, upper),
  'no-number': (_, say) => say.notNumber,
  'no-whole-number': (_, say) => say.notWhole,
  bounds: ({ least, most }, say) => say.notBetween(least, most),
  'not-above': ({ limit }, say) => say.notAbove(limit),
  'text-length': ({ least, most }, say) => say.textLength(least, most),
  'time-of-day': (_, say) => say.timeOfDay,
  'check-id': (_, say) => say.checkId,
};

/** The fault with its place and its reason. */
export function sayPlanFault(fault: PlanFault): Fault {
  const say = sayings[fault.kind] as (fault: PlanFault, say: FaultWords) => string;
  return { where: fault.where, reason: ({ faults }) => say(fault, faults) };
}
