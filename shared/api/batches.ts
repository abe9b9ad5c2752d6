// Batches: opening, closing the chamber, holding, logging, checks, finishing.

import { z } from 'zod';
import { stageNameSchema } from '../healing/profile.ts';
import { shapes } from '../words/en/shapes.ts';
import { batchBriefSchema } from './chambers.ts';
import { idSchema, timeSchema } from './common.ts';
import { logEntrySchema, logKinds } from './log-entry.ts';

export const batchSchema = batchBriefSchema.extend({
  chamberId: idSchema,
  chamberName: z.string(),
  profileId: idSchema,
  profileVersion: z.number().int(),
  profileName: z.string(),
  method: z.string(),
  finishedAt: timeSchema.nullable(),
  takenPlants: z.number().int().nullable(),
  stages: z.array(z.object({ stage: stageNameSchema, startsAt: timeSchema, endsAt: timeSchema.nullable() })),
  log: z.array(logEntrySchema),
});
export type BatchView = z.infer<typeof batchSchema>;

const text = z.string().trim().max(120);
export const newBatchSchema = z.object({
  chamberId: idSchema,
  profileId: idSchema,
  code: z.string().trim().min(1, shapes.giveCode).max(40),
  scion: text.default(''),
  rootstock: text.default(''),
  method: text.default(''),
  trays: z.number().int().min(0).max(100_000).default(0),
  plants: z.number().int().min(0).max(10_000_000).default(0),
  openedAt: timeSchema.optional(),
  /** Given when the chamber is closed already. */
  closedAt: timeSchema.optional(),
});
export const batchPatchSchema = z.object({
  code: z.string().trim().min(1).max(40).optional(),
  scion: text.optional(),
  rootstock: text.optional(),
  method: text.optional(),
  trays: z.number().int().min(0).max(100_000).optional(),
  plants: z.number().int().min(0).max(10_000_000).optional(),
  /** Corrects when the chamber was closed; close it first with close-chamber. */
  closedAt: timeSchema.optional(),
  /** Go on to this stage now, earlier or later than planned. */
  moveOnTo: stageNameSchema.optional(),
});
export const closeChamberBodySchema = z.object({ closedAt: timeSchema.optional() });
export const holdBodySchema = z.object({ reason: z.string().trim().max(300).default('') });
export const logBodySchema = z
  .object({
    kind: z.enum(logKinds),
    gapPercent: z.number().min(0).max(100).optional(),
    minutes: z
      .number()
      .min(5)
      .max(60)
      .optional()
      .describe('How long the work in the tent will take; alarms of its air are quiet so long'),
    note: z.string().trim().max(1000).default(''),
    at: timeSchema.optional(),
  })
  .refine((body) => body.kind !== 'gap' || body.gapPercent !== undefined, {
    path: ['gapPercent'],
    error: shapes.sayGap,
  })
  .refine((body) => body.kind !== 'working' || body.minutes !== undefined, {
    path: ['minutes'],
    error: shapes.sayMinutes,
  })
  .refine((body) => body.kind !== 'note' || body.note !== '', { path: ['note'], error: shapes.writeNote });
export const finishBodySchema = z.object({
  takenPlants: z.number().int().min(0).max(10_000_000),
  note: z.string().trim().max(1000).default(''),
});

export const checkSchema = z.object({
  checkId: idSchema,
  question: z.string(),
  ifNo: z.string(),
  dueAt: timeSchema,
  status: z.enum(['to-come', 'due', 'overdue', 'answered']),
  answer: z.enum(['yes', 'no']).nullable(),
  answeredAt: timeSchema.nullable(),
  answeredBy: z.string().nullable(),
  note: z.string(),
});
export type CheckView = z.infer<typeof checkSchema>;
export const checkAnswerSchema = z.object({
  answer: z.enum(['yes', 'no']),
  note: z.string().trim().max(1000).default(''),
});
