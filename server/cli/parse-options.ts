// Reads a command's options and files; every mistake is one plain sentence that names the option.
import { parseArgs } from 'node:util';
import { Problem } from '../../shared/problem.ts';
import { parseRfc3339 } from '../../shared/readings/parse-rfc3339.ts';

type OptionKinds = Readonly<Record<string, 'text' | 'flag'>>;

type OptionValues<Kinds extends OptionKinds> = {
  readonly [Name in keyof Kinds]: (Kinds[Name] extends 'text' ? string : true) | undefined;
};

export interface Given<Kinds extends OptionKinds> {
  readonly options: OptionValues<Kinds>;
  readonly words: readonly string[];
}

/**
 * Takes arguments apart. `kinds` names each option without its dashes; `words` names what stands without one, in order, all required.
 * A value may be negative (`--temperature -5`). Throws a Problem of code bad-input.
 */
export function parseOptions<const Kinds extends OptionKinds>(
  args: readonly string[],
  kinds: Kinds,
  words: readonly string[] = [],
): Given<Kinds> {
  const types = Object.entries(kinds).map(([name, kind]) => [name, { type: kind === 'text' ? 'string' : 'boolean' }]);
  const { tokens } = parseArgs({
    args: [...args],
    options: Object.fromEntries(types),
    // Lenient here, so that the sentences are ours and a negative number is a value.
    strict: false,
    tokens: true,
  });
  const options = new Map<string, string | true>();
  const given: string[] = [];
  for (const token of tokens) {
    if (token.kind === 'positional') given.push(token.value);
    if (token.kind === 'option') options.set(token.name, readOption(token, kindOf(kinds, token.name), options));
  }
  checkWords(given, words);
  return { options: Object.fromEntries(options) as OptionValues<Kinds>, words: given };
}

interface OptionToken {
  readonly name: string;
  readonly rawName: string;
  readonly value: string | undefined;
}

function readOption(token: OptionToken, kind: 'text' | 'flag' | undefined, earlier: ReadonlyMap<string, unknown>) {
  const { name, rawName, value } = token;
  if (kind === undefined || rawName !== `--${name}`)
    throw misuse(`There is no option ${rawName}; --help shows those there are.`);
  if (earlier.has(name)) throw misuse(`The option ${rawName} is given twice; give it once.`);
  if (kind === 'flag') {
    if (value !== undefined) throw misuse(`The option ${rawName} takes no value.`);
    return true;
  }
  if (value === undefined || value.startsWith('--')) throw misuse(`The option ${rawName} needs a value after it.`);
  return value;
}

function kindOf(kinds: OptionKinds, name: string): 'text' | 'flag' | undefined {
  return Object.hasOwn(kinds, name) ? kinds[name] : undefined;
}

function checkWords(given: readonly string[], wanted: readonly string[]): void {
  const missing = wanted[given.length];
  if (missing !== undefined) throw misuse(`${missing} is missing; --help shows how the command is used.`);
  const extra = given[wanted.length];
  if (extra !== undefined) throw misuse(`"${extra}" is one word too many; --help shows how the command is used.`);
}

/** The value of an option that must be given. */
export function requireOption(value: string | undefined, name: string): string {
  if (value === undefined || value === '') throw misuse(`The option --${name} is missing.`);
  return value;
}

/** A plain decimal number within a range, both ends included. */
export function readNumber(text: string, name: string, { min, max }: { min: number; max: number }): number {
  const value = /^[-+]?(\d+\.?\d*|\.\d+)$/.test(text) ? Number(text) : Number.NaN;
  if (value >= min && value <= max) return value;
  throw misuse(`--${name} must be a number from ${min} to ${max}, written like 21.5; "${text}" is not.`);
}

/** The error of a command that is used wrongly. */
export function misuse(message: string): Problem {
  return Problem.forOperator('bad-input', message);
}

/** An instant written as RFC 3339, ms since the epoch. */
export function readTime(text: string, name: string): number {
  const ms = parseRfc3339(text);
  if (ms === null) throw misuse(`--${name} must be a time with its zone, like 2026-03-02T07:00:00Z; "${text}" is not.`);
  return ms;
}
