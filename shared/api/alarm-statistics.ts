// Statistics of alarms as they are sent, beside the targets of IEC 62682 that they are held against.
import { z } from 'zod';
import { priorities, ruleIds } from '../alarms/alarm.ts';
import { idSchema, timeSchema } from './common.ts';

const count = z.number().int();
const share = z.number();

const sourceSchema = z.object({
  chamberId: idSchema,
  rule: z.enum(ruleIds),
  /** The probe or check, where the rule is about one. */
  subjectId: z.string().nullable(),
  alarms: count,
});

/** Shares are 0–1. */
export const alarmStatisticsSchema = z.object({
  /** As asked for, or when the first chamber was made if that was later. */
  from: timeSchema,
  to: timeSchema,
  alarms: count,
  hours: z.number(),
  perHour: z.number(),
  busiestHour: count,
  shares: z.record(z.enum(priorities), share).nullable(),
  days: z.array(
    z.object({ date: z.string(), alarms: count, byPriority: z.record(z.enum(priorities), count), stale: count }),
  ),
  chattering: z.array(sourceSchema),
  floods: count,
  floodShare: share,
  mostFrequent: z.array(sourceSchema),
  targets: z.object({
    perHourAcceptable: z.number(),
    perHourMost: z.number(),
    priorityShares: z.object({ low: share, medium: share, high: share }),
    staleFewerThan: count,
    chatteringMost: count,
  }),
});
export type AlarmStatisticsView = z.infer<typeof alarmStatisticsSchema>;

/** Default: the last 30 days. */
export const statisticsQuerySchema = z.object({ from: timeSchema.optional(), to: timeSchema.optional() });
