// The shape of a healing profile: the plan of a healing as data, so that one for another crop needs no code.
// The numbers of the shipped profiles stand in standard-profiles.ts; this file holds no limit.

import { z } from 'zod';
import { shapes } from '../words/en/shapes.ts';
import { stageNames } from './stage-name.ts';

export { type StageName, stageNames } from './stage-name.ts';

export const stageNameSchema = z.enum(stageNames);

const timeOfDaySchema = z
  .string()
  .regex(/^([01]\d|2[0-3]):[0-5]\d$/, shapes.writeTimeOfDay)
  .describe('Local time of day at the site');

/** Where a number comes from: the source itself, "common practice", or "ours" for a starting value nobody published. */
const basisSchema = z.string().min(1).max(200).describe('Source of the number, "common practice", or "ours"');

const finite = z.number().finite();

/** A fixed end, or the house air's running day mean plus an offset, with a number to fall back on when no house probe is heard. */
export const limitEndSchema = z.union([finite, z.strictObject({ houseOffset: finite, fallback: finite })]);
export type LimitEnd = z.infer<typeof limitEndSchema>;

export const limitSchema = z.discriminatedUnion('shape', [
  z.strictObject({ shape: z.literal('constant'), value: finite, basis: basisSchema }),
  z.strictObject({ shape: z.literal('ramp'), from: finite, to: limitEndSchema, basis: basisSchema }),
  z.strictObject({
    shape: z.literal('stairs'),
    from: finite,
    to: limitEndSchema,
    steps: z.int().min(1).max(48),
    basis: basisSchema,
  }),
  // Published plans name a value for each day, seldom in equal steps: each value holds for an equal share of the stage.
  z.strictObject({ shape: z.literal('levels'), values: z.array(limitEndSchema).min(1).max(48), basis: basisSchema }),
]);
export type Limit = z.infer<typeof limitSchema>;

/** The four limits of one quantity in one stage. `low` and `high` are required: a stage without them could not be watched. */
export const limitSetSchema = z.strictObject({
  lowLow: limitSchema.optional(),
  low: limitSchema,
  high: limitSchema,
  highHigh: limitSchema.optional(),
});
export type LimitSet = z.infer<typeof limitSetSchema>;

export const stagePlanSchema = z.strictObject({
  stage: stageNameSchema,
  afterHours: z
    .number()
    .min(0)
    .max(2000)
    .describe('Clock hours after the chamber was closed; 0 for loading and closed'),
  notBefore: timeOfDaySchema.optional(),
  temperature: limitSetSchema,
  humidity: limitSetSchema,
  vpdKpa: z
    .strictObject({ high: z.number().positive().max(5), basis: basisSchema })
    .optional()
    .describe('Highest vapour pressure deficit of the stage, kPa; absent = not watched'),
});
export type StagePlan = z.infer<typeof stagePlanSchema>;

export const checkPlanSchema = z.strictObject({
  id: z.string().regex(/^[a-z][a-z0-9-]{0,40}$/, shapes.checkId),
  /** What the person looks at, as a question that "yes" answers well. */
  question: z.string().min(3).max(200),
  ifNo: z.string().min(3).max(300).describe('What to do first when the answer is no'),
  /** What a person may log instead: `limp` then says no, `film-dry` likewise. */
  sameAs: z.enum(['erect', 'film-wet']).optional().describe('Log entry that says the same as a yes'),
  afterHours: z.number().min(0).max(2000).optional().describe('Clock hours after closing'),
  atStage: stageNameSchema.optional().describe('Counted from the start of this stage instead of from closing'),
  notBefore: timeOfDaySchema.optional(),
  everyHours: z.number().positive().max(2000).optional(),
  untilHours: z.number().positive().max(2000).optional(),
  overdueMinutes: z.number().positive().max(1440).default(60),
  basis: basisSchema,
});
export type CheckPlan = z.infer<typeof checkPlanSchema>;

export const profileDocumentSchema = z.strictObject({
  name: z.string().min(1).max(80),
  crop: z.string().min(1).max(80),
  note: z.string().max(1000),
  /** Fastest tightening of a limit: crossing a stage border or a step must not make an alarm by itself. */
  grace: z.strictObject({
    temperaturePerHour: z.number().positive().describe('°C an hour'),
    humidityPerHour: z.number().positive().describe('%RH an hour'),
    basis: basisSchema,
  }),
  silenceMinutes: z
    .number()
    .positive()
    .max(240)
    .describe('Longest gap that is joined in a series of no probe, such as a file; a probe has its own'),
  stages: z.array(stagePlanSchema).min(1).max(8),
  endsAfterHours: z.number().positive().max(2000),
  endsNotBefore: timeOfDaySchema.optional(),
  checks: z.array(checkPlanSchema).max(60),
});
export type ProfileDocument = z.infer<typeof profileDocumentSchema>;

/** One version of a profile as stored: a batch pins `(id, version)`. */
export interface Profile {
  readonly id: string;
  readonly version: number;
  readonly document: ProfileDocument;
}
