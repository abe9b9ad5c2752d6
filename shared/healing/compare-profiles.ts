// What changed from one plan to another, as data: the words are the page's. Places in lists do not count, only stages and ids of checks.
import type { LimitName } from './plan-fault.ts';
import type { CheckPlan, Limit, LimitSet, ProfileDocument, StagePlan } from './profile.ts';
import type { StageName } from './stage-name.ts';

type Quantity = 'temperature' | 'humidity';

/** A change of one value: null = it was, or is, not there. */
interface Change<T> {
  readonly before: T | null;
  readonly after: T | null;
}

/** When a stage begins, or the plan ends. */
export interface Moment {
  readonly afterHours: number;
  readonly notBefore: string | null;
}

export type CheckPart = Exclude<keyof CheckPlan, 'id'>;

export type ProfileChange =
  | ({ readonly what: 'name' | 'crop' | 'note' } & Change<string>)
  | { readonly what: 'stage-added' | 'stage-removed'; readonly stage: StageName }
  | ({ readonly what: 'begins'; readonly stage: StageName } & Change<Moment>)
  | ({ readonly what: 'ends' } & Change<Moment>)
  | ({
      readonly what: 'limit';
      readonly stage: StageName;
      readonly quantity: Quantity;
      readonly limit: LimitName;
    } & Change<Limit>)
  | ({ readonly what: 'vpd'; readonly stage: StageName } & Change<number>)
  | ({ readonly what: 'grace'; readonly quantity: Quantity } & Change<number>)
  | ({ readonly what: 'silence' } & Change<number>)
  /** Only where it comes from was changed; of a stage, or of the grace (`stage` null). */
  | { readonly what: 'basis'; readonly stage: StageName | null }
  | { readonly what: 'check-added' | 'check-removed'; readonly question: string }
  | ({ readonly what: 'check'; readonly question: string; readonly part: CheckPart } & Change<string | number>);

/** Every difference between two documents, in the order of a plan; empty when they are the same plan. */
export function compareProfiles(before: ProfileDocument, after: ProfileDocument): ProfileChange[] {
  const texts = (['name', 'crop', 'note'] as const).flatMap((what) => changed(before[what], after[what], { what }));
  return [
    ...texts,
    ...stageChanges(before.stages, after.stages),
    ...changed(endOf(before), endOf(after), { what: 'ends' } as const),
    ...graceChanges(before, after),
    ...changed(before.silenceMinutes, after.silenceMinutes, { what: 'silence' } as const),
    ...checkChanges(before.checks, after.checks),
  ];
}

/** Fills in what differs; nothing when it is the same. */
function changed<T, What extends object>(
  before: T | null,
  after: T | null,
  what: What,
): (What & { before: T | null; after: T | null })[] {
  return isSame(before, after) ? [] : [{ ...what, before, after }];
}

function isSame(one: unknown, other: unknown): boolean {
  return JSON.stringify(sorted(one)) === JSON.stringify(sorted(other));
}

/** The order of fields, and fields that say nothing, make no difference. */
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== 'object' || value === null) return value;
  const fields = Object.entries(value).filter(([, field]) => field !== undefined);
  return fields.sort(([one], [other]) => (one < other ? -1 : 1)).map(([name, field]) => [name, sorted(field)]);
}

function stageChanges(before: readonly StagePlan[], after: readonly StagePlan[]): ProfileChange[] {
  const gone = before.filter(({ stage }) => !after.some((plan) => plan.stage === stage));
  return [
    ...gone.map(({ stage }) => ({ what: 'stage-removed', stage }) as const),
    ...after.flatMap((plan) => {
      const known = before.find(({ stage }) => stage === plan.stage);
      return known === undefined ? [{ what: 'stage-added', stage: plan.stage } as const] : changesOfStage(known, plan);
    }),
  ];
}

function changesOfStage(before: StagePlan, after: StagePlan): ProfileChange[] {
  const { stage } = after;
  const values = [
    ...changed(momentOf(before), momentOf(after), { what: 'begins', stage } as const),
    ...limitChanges(stage, 'temperature', before.temperature, after.temperature),
    ...limitChanges(stage, 'humidity', before.humidity, after.humidity),
    ...changed(before.vpdKpa?.high ?? null, after.vpdKpa?.high ?? null, { what: 'vpd', stage } as const),
  ];
  return values.length > 0 || isSame(before, after) ? values : [{ what: 'basis', stage }];
}

function limitChanges(stage: StageName, quantity: Quantity, before: LimitSet, after: LimitSet): ProfileChange[] {
  return (['lowLow', 'low', 'high', 'highHigh'] as const).flatMap((limit): ProfileChange[] => {
    const [one, other] = [before[limit] ?? null, after[limit] ?? null];
    if (isSame(withoutBasis(one), withoutBasis(other))) return [];
    return [{ what: 'limit', stage, quantity, limit, before: one, after: other }];
  });
}

function withoutBasis(limit: Limit | null): object | null {
  if (limit === null) return null;
  const { basis: _, ...rest } = limit;
  return rest;
}

function graceChanges({ grace: before }: ProfileDocument, { grace: after }: ProfileDocument): ProfileChange[] {
  const values = [
    ...changed(before.temperaturePerHour, after.temperaturePerHour, {
      what: 'grace',
      quantity: 'temperature',
    } as const),
    ...changed(before.humidityPerHour, after.humidityPerHour, { what: 'grace', quantity: 'humidity' } as const),
  ];
  return values.length > 0 || before.basis === after.basis ? values : [{ what: 'basis', stage: null }];
}

const checkParts: readonly CheckPart[] = [
  ...(['question', 'ifNo', 'sameAs', 'afterHours', 'atStage', 'notBefore'] as const),
  ...(['everyHours', 'untilHours', 'overdueMinutes', 'basis'] as const),
];

function checkChanges(before: readonly CheckPlan[], after: readonly CheckPlan[]): ProfileChange[] {
  const gone = before.filter(({ id }) => !after.some((check) => check.id === id));
  return [
    ...gone.map(({ question }) => ({ what: 'check-removed', question }) as const),
    ...after.flatMap((check): ProfileChange[] => {
      const known = before.find(({ id }) => id === check.id);
      const { question } = check;
      if (known === undefined) return [{ what: 'check-added', question }];
      return checkParts.flatMap((part) =>
        changed<string | number, { what: 'check'; question: string; part: CheckPart }>(
          known[part] ?? null,
          check[part] ?? null,
          { what: 'check', question, part },
        ),
      );
    }),
  ];
}

function momentOf({ afterHours, notBefore }: StagePlan): Moment {
  return { afterHours, notBefore: notBefore ?? null };
}

function endOf({ endsAfterHours, endsNotBefore }: ProfileDocument): Moment {
  return { afterHours: endsAfterHours, notBefore: endsNotBefore ?? null };
}
