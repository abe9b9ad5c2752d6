// The readable parts of a profile that may be faulty elsewhere, so that every fault is found in one go and not only the first.
import type { z } from 'zod';
import { isJsonObject, type JsonObject } from '../readings/json-object.ts';
import {
  type CheckPlan,
  checkPlanSchema,
  type LimitSet,
  limitSetSchema,
  type StageName,
  stageNameSchema,
} from './profile.ts';

/** A stage as far as it can be read; null = missing or malformed, which is a fault of the shape and told as such. */
export interface StagePart {
  readonly where: string;
  readonly stage: StageName | null;
  readonly afterHours: number | null;
  readonly hasNotBefore: boolean;
  readonly temperature: LimitSet | null;
  readonly humidity: LimitSet | null;
}

export interface CheckPart {
  readonly where: string;
  readonly id: string | null;
  readonly plan: CheckPlan | null;
}

export interface ProfileParts {
  readonly stages: readonly StagePart[];
  readonly checks: readonly CheckPart[];
  readonly endsAfterHours: number | null;
}

/** Reads what can be read of anything at all. */
export function readProfileParts(candidate: unknown): ProfileParts {
  const { stages, checks, endsAfterHours } = objectOrEmpty(candidate);
  return {
    stages: listOf(stages).map((entry, index) => readStage(objectOrEmpty(entry), `/stages/${index}`)),
    checks: listOf(checks).map((entry, index) => readCheck(entry, `/checks/${index}`)),
    endsAfterHours: numberOrNull(endsAfterHours),
  };
}

function readStage({ stage, afterHours, notBefore, temperature, humidity }: JsonObject, where: string): StagePart {
  return {
    where,
    stage: parsedOrNull(stageNameSchema, stage),
    afterHours: numberOrNull(afterHours),
    hasNotBefore: notBefore !== undefined,
    temperature: parsedOrNull(limitSetSchema, temperature),
    humidity: parsedOrNull(limitSetSchema, humidity),
  };
}

function readCheck(check: unknown, where: string): CheckPart {
  const { id } = objectOrEmpty(check);
  return { where, id: typeof id === 'string' ? id : null, plan: parsedOrNull(checkPlanSchema, check) };
}

function parsedOrNull<T>(schema: z.ZodType<T>, value: unknown): T | null {
  return schema.safeParse(value).data ?? null;
}

function objectOrEmpty(value: unknown): JsonObject {
  return isJsonObject(value) ? value : {};
}

function listOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

function numberOrNull(value: unknown): number | null {
  return typeof value === 'number' && Number.isFinite(value) ? value : null;
}
