// Chambers with their climate now, and the series behind a chart.

import { z } from 'zod';
import { chamberRuleIds } from '../alarms/alarm.ts';
import { stageNameSchema } from '../healing/profile.ts';
import { shapes } from '../words/en/shapes.ts';
import { alarmSchema } from './alarms.ts';
import { idSchema, nameSchema, timeSchema } from './common.ts';
import { logEntrySchema } from './log-entry.ts';

const quantity = z.number().nullable();

/** Whether the film is expected to be wet inside: an expectation, never a look. */
export const filmSchema = z.object({
  expected: z.enum(['wet', 'dry', 'unknown']),
  /** Dew point of the chamber above the film, °C; null where it cannot be told. */
  margin: quantity,
  basis: z.enum(['film probe', 'house air, an estimate', 'nothing to tell by']),
});
export type FilmView = z.infer<typeof filmSchema>;

/** `null` values mean that no healthy probe is heard: an old value is never sent as if it were fresh. */
export const climateNowSchema = z.object({
  at: timeSchema.nullable(),
  /** When a canopy probe was last heard at all, healthy or not; null = none of those placed here has been. */
  heardAt: timeSchema.nullable(),
  temperature: quantity,
  humidity: quantity,
  vpdKpa: quantity,
  dewPoint: quantity,
  /** ± of the values above from that of a usual capacitive probe; of VPD and dew point as it comes through to them. */
  temperatureUncertainty: quantity,
  humidityUncertainty: quantity,
  vpdKpaUncertainty: quantity,
  dewPointUncertainty: quantity,
  hottest: quantity,
  coldest: quantity,
  driest: quantity,
  /** How old `at` may be before it no longer counts as now. */
  silenceMinutes: z.number(),
  healthyProbes: z.number().int(),
  /** Placed in the canopy and in service, whether heard yet or not. */
  canopyProbes: z.number().int(),
  film: filmSchema,
});
export type ClimateNow = z.infer<typeof climateNowSchema>;

export const bandSchema = z.object({ lowLow: quantity, low: z.number(), high: z.number(), highHigh: quantity });
export const corridorSchema = z.object({ temperature: bandSchema, humidity: bandSchema });

export const nextDueSchema = z.object({
  checkId: idSchema,
  question: z.string(),
  ifNo: z.string(),
  dueAt: timeSchema,
  status: z.enum(['to-come', 'due', 'overdue']),
});

export const batchBriefSchema = z.object({
  id: idSchema,
  code: z.string(),
  scion: z.string(),
  rootstock: z.string(),
  trays: z.number().int(),
  plants: z.number().int(),
  openedAt: timeSchema,
  closedAt: timeSchema.nullable(),
  endsAt: timeSchema.nullable(),
  healingDay: z.number().int(),
  stage: stageNameSchema.nullable(),
  onHold: z.boolean(),
  gapPercent: z.number().nullable(),
});

export const chamberSchema = z.object({
  id: idSchema,
  name: nameSchema,
  climate: climateNowSchema,
  house: z.object({ temperature: quantity, humidity: quantity }),
  limits: corridorSchema.nullable(),
  /** When the air is expected to be drier than its low limit: eight of ten cases between the two ends; null = not likely, or not known. */
  dryAhead: z
    .object({
      limit: z.number(),
      at: timeSchema.nullable(),
      earliest: timeSchema.nullable(),
      latest: timeSchema.nullable(),
    })
    .nullable(),
  batch: batchBriefSchema.nullable(),
  nextDue: nextDueSchema.nullable(),
  /** Everything but normal, worst first. */
  alarms: z.array(alarmSchema),
  /** Set while alarms of the air are quiet because the air is disturbed on purpose. */
  suppression: z.object({ cause: z.enum(['working', 'vent-step']), until: timeSchema, by: z.string() }).nullable(),
  /** Rules that a manager took out of service here: they raise no alarm until they are returned. */
  outOfService: z.array(
    z.object({ rule: z.enum(chamberRuleIds), name: z.string(), by: z.string(), at: timeSchema, reason: z.string() }),
  ),
});
export type ChamberView = z.infer<typeof chamberSchema>;

export const outOfServiceBodySchema = z.object({
  reason: z.string().trim().min(3, shapes.sayWhy).max(300),
});

/** Out of use, kept for the records of its batches. */
export const retiredChamberSchema = z.object({ id: idSchema, name: z.string(), retiredAt: timeSchema });
export type RetiredChamber = z.infer<typeof retiredChamberSchema>;

export const newChamberSchema = z.object({ name: nameSchema });
export const chamberPatchSchema = newChamberSchema.partial();

export const climateQuerySchema = z.object({
  /** Default: from the opening of the open batch (else 24 h ago) to the planned end of its healing (else now). */
  from: timeSchema.optional(),
  to: timeSchema.optional(),
  points: z.coerce.number().int().min(10).max(2000).default(300),
});

const column = z.array(quantity);
const envelope = z.object({ min: column, mean: column, max: column });

export const chartEventSchema = z.object({
  at: timeSchema,
  until: timeSchema.nullable(),
  kind: z.enum(['check', 'log', 'alarm', 'stage', 'hold']),
  /** check: to-come, due, overdue, yes, no · log: the log kind · alarm: the rule · stage: the stage */
  what: z.string(),
  /** In English, and in the words of people and profiles: for machines. Pages say it from the other fields. */
  label: z.string(),
  entry: logEntrySchema.optional().describe('Of kind log: the entry itself'),
});
export type ChartEvent = z.infer<typeof chartEventSchema>;

/**
 * What lies ahead of the hottest healthy canopy probe, °C: eight of ten temperatures are expected between `low` and `high`. It ends where the
 * warning of heat looks to. Columns have the same length; the first stands at `from`, the time of the last reading.
 */
export const forecastSchema = z.object({
  from: timeSchema,
  minutes: z.array(z.number()),
  low: z.array(z.number()),
  middle: z.array(z.number()),
  high: z.array(z.number()),
});
export type ForecastView = z.infer<typeof forecastSchema>;

/** Bucket i covers [startsAt + i·bucketSeconds, +bucketSeconds). Every column has the same length; null = nothing was measured in it. */
export const climateSeriesSchema = z.object({
  startsAt: timeSchema,
  bucketSeconds: z.number(),
  now: timeSchema,
  temperature: envelope,
  humidity: envelope,
  houseHumidity: column,
  houseTemperature: column,
  /** Share of readings in the bucket that are suspect or failed, 0–1. */
  badShare: column,
  /** A stretch of nulls no longer than this lies between two readings of a probe at its pace: it is no gap. Seconds. */
  silenceSeconds: z.number(),
  corridor: z.object({
    temperature: z.object({ low: column, high: column, highHigh: column }),
    humidity: z.object({ low: column, high: column }),
  }),
  events: z.array(chartEventSchema),
  forecast: forecastSchema.nullable(),
});
export type ClimateSeries = z.infer<typeof climateSeriesSchema>;
