// Faults in the shape of a profile, as zod finds them, in plain sentences with their place as a JSON Pointer (RFC 6901).
import type { z } from 'zod';
import type { Fault } from '../problem.ts';
import { describeValue, isJsonObject } from '../readings/json-object.ts';
import { pointerToken, resolvePointer } from '../readings/json-pointer.ts';
import { sayPart } from '../readings/say-refusal.ts';
import { findShape } from '../words/find-shape.ts';
import type { SharedWords } from '../words/shared-words.ts';

type Issue = z.core.$ZodIssue;

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
    return [
      {
        where,
        reason: (words) =>
          value === undefined ? words.faults.missing(wanted(issue, words)) : wrong(issue, value, words),
      },
    ];
  });
}

function unknownField(where: string, key: string): Fault {
  return { where: `${where}/${pointerToken(key)}`, reason: ({ faults }) => faults.unknownField };
}

function wrong(issue: Issue, value: unknown, words: SharedWords): string {
  const { faults } = words;
  if (issue.code === 'too_small' && (value === '' || isEmptyList(value))) return faults.empty;
  if (issue.code === 'too_small' || issue.code === 'too_big')
    return faults.mustBe(bound(issue, words), shown(value, words));
  if (issue.code === 'invalid_format') return faults.unreadable(findShape(issue.message)?.(words) ?? issue.message);
  return faults.mustBe(wanted(issue, words), sayPart(describeValue(value), words));
}

function wanted(issue: Issue, { faults }: SharedWords): string {
  if (issue.code === 'invalid_type') return faults.kinds[issue.expected] ?? faults.ofKind(issue.expected);
  if (issue.code === 'invalid_value') return faults.oneOf(issue.values.map(String).join(', '));
  if (issue.code !== 'invalid_union') return issue.message;
  const { options } = issue as { options?: readonly unknown[] };
  return options === undefined ? faults.numberOrHouse : faults.oneOf(options.map(String).join(', '));
}

type Bound = Extract<Issue, { code: 'too_small' | 'too_big' }>;

function bound(issue: Bound, { faults }: SharedWords): string {
  const isLeast = issue.code === 'too_small';
  const limit = String(isLeast ? issue.minimum : issue.maximum);
  if (issue.origin === 'string') return isLeast ? faults.leastText(limit) : faults.mostText(limit);
  if (issue.origin === 'array') return isLeast ? faults.leastEntries(limit) : faults.mostEntries(limit);
  if (issue.inclusive === false) return isLeast ? faults.above(limit) : faults.below(limit);
  return isLeast ? faults.least(limit) : faults.most(limit);
}

function isEmptyList(value: unknown): boolean {
  return Array.isArray(value) && value.length === 0;
}

function shown(value: unknown, words: SharedWords): string {
  if (typeof value === 'string') return `${value.length}`;
  return Array.isArray(value) ? `${value.length}` : sayPart(describeValue(value), words);
}
