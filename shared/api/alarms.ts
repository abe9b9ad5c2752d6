// Alarms as they are listed, acknowledged and shelved.

import { z } from 'zod';
import { alarmStates, priorities, ruleIds } from '../alarms/alarm.ts';
import { shapes } from '../words/en/shapes.ts';
import { idSchema, timeSchema } from './common.ts';

/** An alarm's id carries chamber, rule and probe or check: longer than other ids. */
export const alarmIdSchema = z.string().min(1).max(200);

const batchPlaceSchema = z.object({ chamberId: idSchema, chamberName: z.string(), batchCode: z.string() });

/** What an alarm of the service itself says beside numbers. */
const serviceFactsSchema = z.object({
  /** What is wrong, in English: for machines. */
  trouble: z.string().nullable(),
  /** The same as a text of the catalogue by its key, and what goes into it: pages say it in the language of their reader. */
  finding: z.object({ key: z.string(), args: z.array(z.union([z.string(), z.number()])) }).nullable(),
  /** Open batches whose chambers nobody measures meanwhile. */
  blind: z.array(batchPlaceSchema),
  /** A stretch of time in which nobody watched, and what is known of it now. */
  outage: z
    .object({
      cause: z.enum(['stopped', 'broker']),
      from: timeSchema,
      to: timeSchema,
      chambers: z.array(
        batchPlaceSchema.extend({
          minutesHot: z.number(),
          high: z.number().nullable(),
          minutesDry: z.number(),
          low: z.number().nullable(),
          minutesUnknown: z.number(),
        }),
      ),
      inForce: z.array(z.object({ chamberName: z.string(), rule: z.enum(ruleIds) })),
    })
    .nullable(),
});

export const alarmSchema = z.object({
  id: alarmIdSchema,
  /** null = of the service itself. */
  chamberId: idSchema.nullable(),
  chamberName: z.string(),
  batchId: idSchema.nullable(),
  batchCode: z.string().nullable(),
  rule: z.enum(ruleIds),
  probeId: idSchema.nullable(),
  probeName: z.string().nullable(),
  state: z.enum(alarmStates),
  level: z.union([z.literal(0), z.literal(1), z.literal(2)]),
  priority: z.enum(priorities),
  since: timeSchema,
  occurredAt: timeSchema,
  limit: z.number().nullable(),
  value: z.number().nullable(),
  peak: z.number().nullable(),
  peakAt: timeSchema.nullable(),
  acknowledgedAt: timeSchema.nullable(),
  acknowledgedBy: z.string().nullable(),
  returnedAt: timeSchema.nullable(),
  shelvedUntil: timeSchema.nullable(),
  shelvedReason: z.string().nullable(),
  /** What an alarm about a check asked, what to do first, in the profile's own words, and how many more fell due with it. */
  about: z
    .object({ id: z.string(), question: z.string(), ifNo: z.string(), more: z.number().int().optional() })
    .nullable(),
  /** Of a warning: when its limit is expected to be passed; null = perhaps never. `passed`: when it was seen to be. */
  expected: z
    .object({
      at: timeSchema.nullable(),
      earliest: timeSchema.nullable(),
      latest: timeSchema.nullable(),
      passed: timeSchema.nullable(),
    })
    .nullable(),
  /** Of an alarm of the service itself. */
  service: serviceFactsSchema.nullable(),
  /** The alarm as one sentence in English and °C, and what to do first: for machines. Pages say it from the other fields. */
  sentence: z.string(),
  advice: z.string(),
});
export type AlarmView = z.infer<typeof alarmSchema>;

export const alarmQuerySchema = z.object({
  /** `active` = anything but normal. */
  state: z.enum(['active', ...alarmStates]).optional(),
  chamberId: idSchema.optional(),
});
export const shelveBodySchema = z.object({
  minutes: z
    .number()
    .int()
    .min(1)
    .max(24 * 60),
  reason: z.string().trim().min(3, shapes.sayWhy).max(300),
});
