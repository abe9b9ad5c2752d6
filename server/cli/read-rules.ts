// The file of `replay --rules`: other settings of the alarm rules.
import type { Rule } from '../../shared/alarms/rules/rule.ts';
import { sayFaults } from '../../shared/problem.ts';
import { readRuleSettings } from '../../shared/replay/rule-settings.ts';
import { english } from '../../shared/words/en/english.ts';
import type { Terminal } from './command.ts';
import { misuse } from './parse-options.ts';
import { readInput } from './read-input.ts';

/** Problem `bad-input` that names every fault with its place. */
export async function readRules(path: string, terminal: Pick<Terminal, 'stdin'>): Promise<readonly Rule[]> {
  const text = new TextDecoder().decode(await readInput(path, terminal));
  const { rules, faults } = readRuleSettings(parse(text, path));
  if (rules !== null) return rules;
  const said = sayFaults(faults, english).map(
    ({ where, reason }) => `${where === '' ? 'the whole file' : where} ${reason}`,
  );
  throw misuse(`The rules in ${path} cannot be used: ${said.join('; ')}.`);
}

function parse(text: string, path: string): unknown {
  try {
    return JSON.parse(text);
  } catch (cause) {
    throw misuse(`The file ${path} is not JSON: ${cause instanceof Error ? cause.message : String(cause)}.`);
  }
}
