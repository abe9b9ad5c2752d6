// A fault of a plan in the words of the page, with its numbers in the site's unit.
import type { PlanFault } from '../shared/healing/plan-fault.ts';
import type { FieldFault } from './api.ts';
import { words } from './late-strings.ts';
import { humidityLimitText, temperatureDifferenceText, temperatureLimitText } from './quantities.ts';

type Quantity = 'temperature' | 'humidity';

function valueText(value: number, quantity: Quantity): string {
  return quantity === 'temperature' ? temperatureLimitText(value) : humidityLimitText(value);
}

/** The fault with its place, ready to be shown at its field. */
export function planFaultWords(fault: PlanFault): FieldFault {
  return {
    where: fault.where,
    reason: stageWords(fault) ?? checkWords(fault) ?? limitWords(fault) ?? fieldWords(fault),
  };
}

function stageWords(fault: PlanFault): string | null {
  const said = words.planFaults;
  switch (fault.kind) {
    case 'no-closed':
      return said.noClosed;
    case 'stage-twice':
      return said.stageTwice(words.stages[fault.stage]);
    case 'stage-order':
      return said.stageOrder(words.editor.stageNames[fault.stage], words.stages[fault.after]);
    case 'stage-hours':
      return said.stageHours(fault.latest);
    case 'stage-not-zero':
      return said.stageNotZero;
    case 'stage-time-of-day':
      return said.stageTimeOfDay;
    case 'end-hours':
      return said.endHours(fault.latest);
    default:
      return null;
  }
}

function checkWords(fault: PlanFault): string | null {
  const said = words.planFaults;
  switch (fault.kind) {
    case 'id-twice':
      return said.idTwice;
    case 'no-moment':
      return said.noMoment;
    case 'no-stage':
      return said.noStage(words.stages[fault.stage]);
    case 'too-late':
      return said.tooLate(fault.lengthHours);
    case 'repeat-too-short':
      return said.repeatTooShort(String(fault.least));
    case 'until-without-repeat':
      return said.untilWithoutRepeat;
    case 'until-before-first':
      return said.untilBeforeFirst(fault.hours);
    case 'check-id':
      return said.checkId;
    default:
      return null;
  }
}

function limitWords(fault: PlanFault): string | null {
  const { limits } = words.editor;
  if (fault.kind === 'out-of-reach') {
    const text = (value: number) => valueText(value, fault.quantity);
    return words.planFaults.outOfReach(text(fault.value), text(fault.least), text(fault.most));
  }
  if (fault.kind === 'crossing') {
    const [below, above] = [valueText(fault.below, fault.quantity), valueText(fault.above, fault.quantity)];
    return words.planFaults.crossing(limits[fault.lower], below, limits[fault.upper], above, fault.percent);
  }
  if (fault.kind === 'house-crossing') {
    const by = fault.quantity === 'temperature' ? temperatureDifferenceText(fault.by) : humidityLimitText(fault.by);
    return words.planFaults.houseCrossing(limits[fault.lower], limits[fault.upper], by);
  }
  return null;
}

function fieldWords(fault: PlanFault): string {
  const said = words.planFaults;
  switch (fault.kind) {
    case 'bounds':
      return said.bounds(fault.least, fault.most);
    case 'not-above':
      return said.notAbove(fault.limit);
    case 'no-whole-number':
      return said.noWholeNumber;
    case 'text-length':
      return fault.least === 1 ? said.empty : said.textLength(fault.least, fault.most);
    case 'time-of-day':
      return said.timeOfDay;
    default:
      return said.noNumber;
  }
}
