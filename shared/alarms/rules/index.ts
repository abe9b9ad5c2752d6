// All rules, in the order in which they are judged.
import type { RuleId } from '../alarm.ts';
import { cold } from './cold.ts';
import { dry } from './dry.ts';
import { heat } from './heat.ts';
import { heatAhead } from './heat-ahead.ts';
import type { Rule } from './rule.ts';
import { silentChamber } from './silent-chamber.ts';
import { silentProbe } from './silent-probe.ts';
import { wet } from './wet.ts';

export const allRules: readonly Rule[] = [heat, cold, dry, wet, silentProbe, silentChamber, heatAhead];

/** The rule of an id. */
export function ruleOf(id: RuleId): Rule {
  const rule = allRules.find((one) => one.id === id);
  if (rule === undefined) throw new RangeError(`no rule ${id}`);
  return rule;
}
