// Changes to a draft of a profile, each as a new document. Pure; what may not be is told by draftFaults(), not prevented here.
import type { CheckPlan, Limit, LimitEnd, LimitSet, ProfileDocument, StagePlan } from '../../shared/healing/profile.ts';
import { type StageName, stageNames } from '../../shared/healing/stage-name.ts';

export type Quantity = 'temperature' | 'humidity';
export type LimitName = keyof LimitSet;

/** The number of an end when house air is not known. */
export function fallbackOf(end: LimitEnd): number {
  return typeof end === 'number' ? end : end.fallback;
}

function replaced<T>(list: readonly T[], index: number, item: T): T[] {
  return list.map((one, at) => (at === index ? item : one));
}

export function withStage(draft: ProfileDocument, index: number, plan: StagePlan): ProfileDocument {
  return { ...draft, stages: replaced(draft.stages, index, plan) };
}

export function withoutStage(draft: ProfileDocument, index: number): ProfileDocument {
  return { ...draft, stages: draft.stages.filter((_, at) => at !== index) };
}

/** The stage in its place in the order, with the limits of the one before it, a day later; the end moves on where it must. */
export function withNewStage(draft: ProfileDocument, stage: StageName): ProfileDocument {
  const rank = stageNames.indexOf(stage);
  const before = draft.stages.filter((plan) => stageNames.indexOf(plan.stage) < rank);
  const after = draft.stages.filter((plan) => stageNames.indexOf(plan.stage) > rank);
  const model = before.at(-1) ?? after[0];
  if (model === undefined) return draft;
  const isActed = stage === 'loading' || stage === 'closed';
  const afterHours = isActed ? 0 : (before.at(-1)?.afterHours ?? 0) + 24;
  const { notBefore: _, ...limits } = model;
  const plan: StagePlan = { ...limits, stage, afterHours };
  return {
    ...draft,
    stages: [...before, plan, ...after],
    endsAfterHours: Math.max(draft.endsAfterHours, after.length === 0 ? afterHours + 24 : 0),
  };
}

/** A limit of a stage set, or taken away where it may be absent. */
export function withLimit(plan: StagePlan, quantity: Quantity, name: LimitName, limit: Limit | undefined): StagePlan {
  const { [name]: _, ...others } = plan[quantity];
  const set = (limit === undefined ? others : { ...others, [name]: limit }) as LimitSet;
  return { ...plan, [quantity]: set };
}

/** The same limit in another shape, with as much of its numbers as that can hold. */
export function reshaped(limit: Limit, shape: Limit['shape']): Limit {
  const { basis } = limit;
  const { from, to } = endsOf(limit);
  if (shape === 'constant') return { shape, value: from, basis };
  if (shape === 'ramp') return { shape, from, to, basis };
  if (shape === 'stairs') return { shape, from, to, steps: 4, basis };
  return { shape, values: from === to ? [from, from] : [from, to], basis };
}

function endsOf(limit: Limit): { readonly from: number; readonly to: LimitEnd } {
  if (limit.shape === 'constant') return { from: limit.value, to: limit.value };
  if (limit.shape !== 'levels') return limit;
  const { values } = limit;
  return { from: fallbackOf(values[0] ?? Number.NaN), to: values.at(-1) ?? Number.NaN };
}

/** An end as a plain number, or as house level with that number to fall back on. */
export function atHouse(end: LimitEnd, isHouse: boolean): LimitEnd {
  if (!isHouse) return fallbackOf(end);
  return typeof end === 'number' ? { houseOffset: 0, fallback: end } : end;
}

/** One level more, like the last, or one less; at least one stays. */
export function withLevelCount(limit: Extract<Limit, { shape: 'levels' }>, count: number): Limit {
  const last = limit.values.at(-1) ?? Number.NaN;
  const values = Array.from({ length: Math.min(48, Math.max(1, count)) }, (_, at) => limit.values[at] ?? last);
  return { ...limit, values };
}

/** The number of steps of every staircase of a stage; null when it has none. */
export function stepsOf(plan: StagePlan): number | null {
  return stairsOf(plan)[0] ?? null;
}

function stairsOf({ temperature, humidity }: StagePlan): number[] {
  const limits = [...Object.values(humidity), ...Object.values(temperature)];
  return limits.flatMap((limit) => (limit?.shape === 'stairs' ? [limit.steps] : []));
}

/** Every staircase of the stage with this number of steps. */
export function withSteps(plan: StagePlan, steps: number): StagePlan {
  const inSet = (set: LimitSet) =>
    Object.fromEntries(
      Object.entries(set).map(([name, limit]) => [name, limit?.shape === 'stairs' ? { ...limit, steps } : limit]),
    ) as LimitSet;
  return { ...plan, temperature: inSet(plan.temperature), humidity: inSet(plan.humidity) };
}

/** A field that may be absent: undefined takes it away. */
export function withOptional<T extends object, Key extends keyof T & string>(
  item: T,
  key: Key,
  value: T[Key] | undefined,
): T {
  const { [key]: _, ...others } = item;
  return (value === undefined ? others : { ...others, [key]: value }) as T;
}

export function withCheck(draft: ProfileDocument, index: number, check: CheckPlan): ProfileDocument {
  return { ...draft, checks: replaced(draft.checks, index, check) };
}

export function withoutCheck(draft: ProfileDocument, index: number): ProfileDocument {
  return { ...draft, checks: draft.checks.filter((_, at) => at !== index) };
}

/** A check to be filled in, with an id that is not taken. */
export function withNewCheck(draft: ProfileDocument, basis: string): ProfileDocument {
  const ids = new Set(draft.checks.map(({ id }) => id));
  let number = draft.checks.length + 1;
  while (ids.has(`check-${number}`)) number += 1;
  const check = { id: `check-${number}`, question: '', ifNo: '', afterHours: 24, overdueMinutes: 60, basis };
  return { ...draft, checks: [...draft.checks, check] };
}

/** A short id out of a name, one that is not taken: "Pepper, cool" → "pepper-cool". */
export function profileIdOf(name: string, taken: readonly string[]): string {
  const plain = name.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
  const id =
    plain
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 50) || 'profile';
  let free = id;
  for (let number = 2; taken.includes(free); number++) free = `${id}-${number}`;
  return free;
}
