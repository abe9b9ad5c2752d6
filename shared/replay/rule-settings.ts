// Other settings of the alarm rules, to try in a replay what they would have told. The live watch keeps its own; no limit is set here, those
// stand in the profile.
import { z } from 'zod';
import { chamberRuleIds, type RuleId } from '../alarms/alarm.ts';
import { chamberRules, ruleOf } from '../alarms/rules/index.ts';
import type { Rule } from '../alarms/rules/rule.ts';
import { shapeFaults } from '../healing/shape-faults.ts';
import type { Fault } from '../problem.ts';
import { isJsonObject } from '../readings/json-object.ts';
import { pointerToken } from '../readings/json-pointer.ts';
import { SECOND_MS } from '../units.ts';

/** A day: what is told later than that is told to nobody. */
const seconds = z.number().min(0).max(86_400);

/** What a rule may be given; what is left out stays as it is. */
const ruleSettingsSchema = z.strictObject({
  /** At the limit. */
  onDelaySeconds: seconds.optional(),
  /** At the outer limit. */
  outerOnDelaySeconds: seconds.optional(),
  offDelaySeconds: seconds.optional(),
  /** In the unit of the rule's value; only of rules that have one. */
  deadband: z.number().min(0).max(20).optional(),
  /** True = the rule tells nothing. */
  off: z.boolean().optional(),
});
type RuleSettings = z.infer<typeof ruleSettingsSchema>;

const fileSchema = z.partialRecord(z.enum(chamberRuleIds), ruleSettingsSchema);

export interface RulesVerdict {
  /** All rules as the settings want them; null when there is any fault. */
  readonly rules: readonly Rule[] | null;
  /** Every fault with its place as a JSON Pointer (RFC 6901). */
  readonly faults: readonly Fault[];
}

/** The rules as a file of settings wants them, or all that is wrong with it; anything at all may be given. */
export function readRuleSettings(candidate: unknown): RulesVerdict {
  if (!isJsonObject(candidate))
    return { rules: null, faults: [{ where: '', reason: ({ faults }) => faults.rulesWanted }] };
  const isRule = (name: string) => chamberRuleIds.some((id) => id === name);
  const known = Object.fromEntries(Object.entries(candidate).filter(([name]) => isRule(name)));
  const parsed = fileSchema.safeParse(known);
  const faults = [
    ...Object.keys(candidate).flatMap((name) => (isRule(name) ? [] : [unknownRule(name)])),
    ...shapeFaults(parsed.error?.issues ?? [], candidate),
    ...chamberRuleIds.flatMap((id) => deadbandFaults(id, known[id])),
  ];
  return { rules: faults.length > 0 || !parsed.success ? null : applySettings(parsed.data), faults };
}

function unknownRule(name: string): Fault {
  return { where: `/${pointerToken(name)}`, reason: ({ faults }) => faults.unknownRule(chamberRuleIds.join(', ')) };
}

function deadbandFaults(id: RuleId, given: unknown): Fault[] {
  if (!isJsonObject(given) || given['deadband'] === undefined || ruleOf(id).deadband !== undefined) return [];
  return [{ where: `/${id}/deadband`, reason: ({ faults }) => faults.noDeadband }];
}

function applySettings(given: Partial<Record<RuleId, RuleSettings>>): Rule[] {
  return chamberRules.flatMap((rule) => {
    const settings = given[rule.id] ?? {};
    return settings.off === true ? [] : [applyTo(rule, settings)];
  });
}

function applyTo(rule: Rule, settings: RuleSettings): Rule {
  const { onDelaySeconds, outerOnDelaySeconds, offDelaySeconds, deadband } = settings;
  const delay = (given: number | undefined, own: number) => (given === undefined ? own : given * SECOND_MS);
  return {
    ...rule,
    onDelayMs: [delay(onDelaySeconds, rule.onDelayMs[0]), delay(outerOnDelaySeconds, rule.onDelayMs[1])],
    offDelayMs: delay(offDelaySeconds, rule.offDelayMs),
    ...(deadband !== undefined && { deadband }),
  };
}
