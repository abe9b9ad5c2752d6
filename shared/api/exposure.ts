// What the plants of a batch were exposed to, per healing day, stage and batch.
import { z } from 'zod';
import { idSchema, timeSchema } from './common.ts';
import { partStages } from './record.ts';

const quantity = z.number().nullable();
const spreadSchema = z.object({ mean: quantity, min: quantity, max: quantity });
const perLimitSchema = z.record(z.string(), z.number());
/** Hours inside the corridor, of the known hours for which there was one. */
const insideSchema = z.object({ hours: z.number(), judgedHours: z.number(), share: quantity });

const partSchema = z.object({
  from: timeSchema,
  to: timeSchema,
  temperature: spreadSchema,
  humidity: spreadSchema,
  insideCorridor: z.object({ temperature: insideSchema, humidity: insideSchema }),
  minutesAbove: perLimitSchema,
  degreeHoursAbove: perLimitSchema,
  vpdKpaHours: z.number(),
  /** Hours in which temperature or humidity is not known: nothing of them is in the other figures. */
  unknownHours: z.number(),
});
export type ExposurePart = z.infer<typeof partSchema>;

export const exposureSchema = z.object({
  batchId: idSchema,
  days: z.array(partSchema.extend({ day: z.number().int() })),
  /** Those that have begun; from closing on they add up to the whole, as the days do. */
  stages: z.array(partSchema.extend({ stage: z.enum(partStages) })),
  /** From closing on; null until the chamber is closed. */
  whole: partSchema.nullable(),
});
export type ExposureView = z.infer<typeof exposureSchema>;
