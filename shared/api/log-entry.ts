// A line of a batch's log: what people log, and what the program writes when they act on the batch.
import { z } from 'zod';
import { correctable } from '../healing/batch-log.ts';
import { stageNameSchema } from '../healing/profile.ts';
import { idSchema, timeSchema } from './common.ts';

export const logKinds = [
  'mist',
  'gap',
  'limp',
  'erect',
  'film-wet',
  'film-dry',
  'working',
  'work-done',
  'note',
] as const;
/** Kinds that the program writes itself when a person acts on the batch. */
export const actKinds = ['opened', 'closed', 'hold', 'resume', 'moved-on', 'check', 'corrected', 'finished'] as const;

const answeredCheckSchema = z.object({
  id: idSchema.describe('Of the check in the profile version of the batch'),
  checkId: idSchema.nullable().describe('The occasion, as in the list of checks; null = not known'),
  question: z.string().describe('In the words of the profile'),
  answer: z.enum(['yes', 'no']),
});

const value = z.union([z.string(), z.number()]);
const correctionSchema = z.object({
  field: z.enum(correctable),
  before: value.describe('"" = it was empty'),
  after: value,
});

export const logEntrySchema = z.object({
  id: idSchema,
  at: timeSchema,
  kind: z.enum([...logKinds, ...actKinds]),
  gapPercent: z.number().nullable(),
  /** How long work in the tent was said to take; only of kind `working`. */
  minutes: z.number().nullable().optional(),
  check: answeredCheckSchema
    .nullable()
    .describe('Only of kind check; null where the note of an old entry says it as a sentence'),
  stage: stageNameSchema.nullable().describe('Where the batch was moved on to; only of kind moved-on'),
  changes: z.array(correctionSchema).nullable().describe('What was corrected; only of kind corrected'),
  note: z.string().describe('What the person wrote'),
  person: z.string(),
});
export type LogEntry = z.infer<typeof logEntrySchema>;
