// The handles on the strip of a plan: which numbers can be dragged, where each stands, and what the draft becomes. Pure.
import type { Limit, LimitEnd, ProfileDocument, StagePlan } from '../../shared/healing/profile.ts';
import type { StageName } from '../../shared/healing/stage-name.ts';
import { fallbackOf, type LimitName, type Quantity, withLimit, withStage } from './edit-draft.ts';

/** Which of a limit's numbers: its only one, its beginning, its end, or a level. */
export type Part = { readonly at: 'value' | 'from' | 'to' } | { readonly at: 'level'; readonly level: number };

interface Range {
  readonly value: number;
  readonly min: number;
  readonly max: number;
  /** Of an arrow key, and of the pointer. */
  readonly step: number;
}

export interface BorderHandle extends Range {
  readonly kind: 'border';
  readonly key: string;
  /** The stage that begins here, or the end of the plan. */
  readonly stage: StageName | 'end';
  readonly set: (value: number) => ProfileDocument;
}

export interface LimitHandle extends Range {
  readonly kind: 'limit';
  readonly key: string;
  readonly stage: StageName;
  readonly quantity: Quantity;
  readonly name: LimitName;
  readonly part: Part;
  readonly isHouse: boolean;
  /** Hours after closing at which it stands. */
  readonly atHours: number;
  readonly set: (value: number) => ProfileDocument;
}

/** More levels than this stand too close for a finger: they are changed in the fields. */
const mostLevels = 6;
const reach = { temperature: { min: -20, max: 60, step: 0.5 }, humidity: { min: 0, max: 100, step: 1 } } as const;

/** The stage after `index`, or the end: what its hours may not pass. */
function endOf(draft: ProfileDocument, index: number): number {
  return draft.stages[index + 1]?.afterHours ?? draft.endsAfterHours;
}

/** Borders that the clock moves: the beginnings of venting and hardening, and the end. */
export function borderHandles(draft: ProfileDocument): readonly BorderHandle[] {
  const later = draft.stages.flatMap((plan, index): BorderHandle[] => {
    const { stage } = plan;
    if (stage === 'loading' || stage === 'closed') return [];
    const before = draft.stages[index - 1]?.afterHours ?? 0;
    return [
      {
        ...{ kind: 'border', key: stage, stage, value: plan.afterHours, step: 1 },
        ...{ min: before + 1, max: endOf(draft, index) - 1 },
        set: (afterHours) => withStage(draft, index, { ...plan, afterHours }),
      },
    ];
  });
  const last = draft.stages.at(-1)?.afterHours ?? 0;
  return [
    ...later,
    {
      ...{ kind: 'border', key: 'end', stage: 'end', value: draft.endsAfterHours, step: 1 },
      ...{ min: last + 1, max: 2000 },
      set: (endsAfterHours) => ({ ...draft, endsAfterHours }),
    },
  ];
}

/**
 * Where in its stage a handle stands, 0–1: places a finger's width apart on the smallest phone, so that none covers another. Low tags hang under
 * their line and high ones over it, so that those at a beginning or end of opposite directions may share a place.
 */
const ends = { inner: { from: 0.083, to: 0.917 }, outer: { from: 0.25, to: 0.75 } } as const;
const shares: Record<Quantity, Record<LimitName, { from: number; to: number; value: number }>> = {
  humidity: {
    lowLow: { ...ends.outer, value: 0.583 },
    low: { ...ends.inner, value: 0.417 },
    high: { ...ends.inner, value: 0.25 },
    highHigh: { ...ends.outer, value: 0.75 },
  },
  temperature: {
    lowLow: { from: 0.583, to: 0.75, value: 0.083 },
    low: { from: 0.417, to: 0.917, value: 0.25 },
    high: { from: 0.417, to: 0.917, value: 0.417 },
    highHigh: { from: 0.583, to: 0.75, value: 0.583 },
  },
};
/** One level stands for the whole stage: beside what stands in the middle. */
const soleLevel = 0.75;
/** Where in its own part a level of many stands: an outer limit beside the one it lies behind. */
const levelShares: Record<LimitName, number> = { lowLow: 0.75, low: 0.25, high: 0.25, highHigh: 0.75 };

/** The limits of one stage after closing. A number that is missing has no handle. */
export function limitHandles(draft: ProfileDocument, index: number): readonly LimitHandle[] {
  const plan = draft.stages[index];
  if (plan === undefined || plan.stage === 'loading') return [];
  return (['humidity', 'temperature'] as const).flatMap((quantity) =>
    (['lowLow', 'low', 'high', 'highHigh'] as const).flatMap((name) => {
      const limit = plan[quantity][name];
      if (limit === undefined) return [];
      return partsOf(limit).flatMap((part) => handleOf({ draft, index, plan, quantity, name, limit, part }));
    }),
  );
}

interface Where {
  readonly draft: ProfileDocument;
  readonly index: number;
  readonly plan: StagePlan;
  readonly quantity: Quantity;
  readonly name: LimitName;
  readonly limit: Limit;
  readonly part: Part;
}

function handleOf({ draft, index, plan, quantity, name, limit, part }: Where): LimitHandle[] {
  const end = endAt(limit, part);
  const value = fallbackOf(end);
  const lengthHours = endOf(draft, index) - plan.afterHours;
  if (!Number.isFinite(value) || !(lengthHours > 0)) return [];
  return [
    {
      ...{ kind: 'limit', stage: plan.stage, quantity, name, part, value, ...reach[quantity] },
      key: [plan.stage, quantity, name, part.at === 'level' ? part.level : part.at].join(' '),
      isHouse: typeof end !== 'number',
      atHours: plan.afterHours + shareOf(limit, part, name, shares[quantity][name]) * lengthHours,
      set: (next) => withStage(draft, index, withLimit(plan, quantity, name, withPart(limit, part, next))),
    },
  ];
}

function partsOf(limit: Limit): readonly Part[] {
  if (limit.shape === 'constant') return [{ at: 'value' }];
  if (limit.shape !== 'levels') return [{ at: 'from' }, { at: 'to' }];
  return limit.values.length > mostLevels ? [] : limit.values.map((_, level) => ({ at: 'level', level }));
}

function shareOf(
  limit: Limit,
  part: Part,
  name: LimitName,
  places: { from: number; to: number; value: number },
): number {
  if (part.at !== 'level') return places[part.at];
  const count = limit.shape === 'levels' ? limit.values.length : 1;
  return count === 1 ? soleLevel : (part.level + levelShares[name]) / count;
}

function endAt(limit: Limit, part: Part): LimitEnd {
  if (limit.shape === 'constant') return limit.value;
  if (limit.shape === 'levels') return (part.at === 'level' ? limit.values[part.level] : undefined) ?? Number.NaN;
  return part.at === 'from' ? limit.from : limit.to;
}

/** Of an end at house level the number to fall back on is changed, which is what the strip shows. */
function withPart(limit: Limit, part: Part, value: number): Limit {
  const moved = (end: LimitEnd) => (typeof end === 'number' ? value : { ...end, fallback: value });
  if (limit.shape === 'constant') return { ...limit, value };
  if (limit.shape === 'levels') {
    const values = limit.values.map((end, level) => (part.at === 'level' && part.level === level ? moved(end) : end));
    return { ...limit, values };
  }
  return part.at === 'from' ? { ...limit, from: value } : { ...limit, to: moved(limit.to) };
}

/** What a key does to a value, held inside the range; null for keys that do nothing. */
export function valueAfterKey(key: string, { value, min, max, step }: Range, largeStep: number): number | null {
  const by: Record<string, number> = {
    ...{ ArrowRight: step, ArrowUp: step, ArrowLeft: -step, ArrowDown: -step },
    ...{ PageUp: largeStep, PageDown: -largeStep },
  };
  if (key === 'Home') return min;
  if (key === 'End') return max;
  const change = by[key];
  return change === undefined ? null : held(value + change, { min, max });
}

/** A dragged value on its step, inside the range. */
export function snapped(value: number, { min, max, step }: Range): number {
  return held(Math.round(value / step) * step, { min, max });
}

function held(value: number, { min, max }: Pick<Range, 'min' | 'max'>): number {
  return Math.min(max, Math.max(min, value));
}
