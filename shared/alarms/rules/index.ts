// All rules, of chambers and of the service itself, each in the order in which they are judged.
import type { RuleId } from '../alarm.ts';
import { serviceRules } from '../service/service-rules.ts';
import { checkFailed } from './check-failed.ts';
import { checkOverdue } from './check-overdue.ts';
import { cold } from './cold.ts';
import { dry } from './dry.ts';
import { heat } from './heat.ts';
import { heatAhead } from './heat-ahead.ts';
import { planLate } from './plan-late.ts';
import type { Rule, RuleTraits } from './rule.ts';
import { silentChamber } from './silent-chamber.ts';
import { silentProbe } from './silent-probe.ts';
import { suspectProbe } from './suspect-probe.ts';
import { vpd } from './vpd.ts';
import { wet } from './wet.ts';

export const chamberRules: readonly Rule[] = [
  heat,
  cold,
  dry,
  wet,
  silentProbe,
  silentChamber,
  vpd,
  suspectProbe,
  checkOverdue,
  checkFailed,
  planLate,
  heatAhead,
];

const allRules: readonly RuleTraits[] = [...chamberRules, ...serviceRules];

/** How the rule of an id behaves. */
export function ruleOf(id: RuleId): RuleTraits {
  const rule = allRules.find((one) => one.id === id);
  if (rule === undefined) throw new RangeError(`no rule ${id}`);
  return rule;
}
