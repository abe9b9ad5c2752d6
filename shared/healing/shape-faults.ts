// Faults in the shape of a profile, as zod finds them, in plain sentences with their place as a JSON Pointer (RFC 6901).
import type { z } from 'zod';
import type { Fault } from '../problem.ts';
import { describeValue, isJsonObject } from '../readings/json-object.ts';
import { pointerToken, resolvePointer } from '../readings/json-pointer.ts';

type Issue = z.core.$ZodIssue;

const kinds: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  object: 'an object',
  array: 'a list',
};

/** Every issue as one or more faults; `candidate` is what was checked, so that a missing value can be told from a wrong one. */
export function shapeFaults(issues: readonly Issue[], candidate: unknown, above = ''): Fault[] {
  return issues.flatMap((issue) => {
    const where = above + issue.path.map((step) => `/${pointerToken(String(step))}`).join('');
    const value = resolvePointer(candidate, where);
    if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => unknownField(where, key));
    // Of a number or an object, an object given is meant to be the object: its own faults say more.
    if (issue.code === 'invalid_union' && isJsonObject(value)) {
      return shapeFaults(issue.errors.at(-1) ?? [], candidate, where);
    }
    return [{ where, reason: value === undefined ? `is missing: give ${wanted(issue)}` : wrong(issue, value) }];
  });
}

function unknownField(where: string, key: string): Fault {
  return { where: `${where}/${pointerToken(key)}`, reason: 'is not a known field: remove it or correct its name' };
}

function wrong(issue: Issue, value: unknown): string {
  if (issue.code === 'too_small' && (value === '' || isEmptyList(value))) return 'must not be empty';
  if (issue.code === 'too_small' || issue.code === 'too_big') return `must be ${bound(issue)}, not ${shown(value)}`;
  if (issue.code === 'invalid_format') return `cannot be read: ${issue.message}`;
  return `must be ${wanted(issue)}, not ${describeValue(value)}`;
}

function wanted(issue: Issue): string {
  if (issue.code === 'invalid_type') return kinds[issue.expected] ?? `a value of the kind ${issue.expected}`;
  if (issue.code === 'invalid_value') return `one of ${issue.values.map(String).join(', ')}`;
  if (issue.code !== 'invalid_union') return issue.message;
  const { options } = issue as { options?: readonly unknown[] };
  if (options !== undefined) return `one of ${options.map(String).join(', ')}`;
  return 'a number, or an object with houseOffset and fallback';
}

type Bound = Extract<Issue, { code: 'too_small' | 'too_big' }>;

function bound(issue: Bound): string {
  const [limit, side] = issue.code === 'too_small' ? [issue.minimum, 'least'] : [issue.maximum, 'most'];
  if (issue.origin === 'string') return `text of at ${side} ${limit} characters`;
  if (issue.origin === 'array') return `a list of at ${side} ${limit} entries`;
  if (issue.inclusive === false) return side === 'least' ? `above ${limit}` : `below ${limit}`;
  return `at ${side} ${limit}`;
}

function isEmptyList(value: unknown): boolean {
  return Array.isArray(value) && value.length === 0;
}

function shown(value: unknown): string {
  if (typeof value === 'string') return `${value.length}`;
  return Array.isArray(value) ? `${value.length}` : describeValue(value);
}
