// The climate record of a batch as it is handed over: everything that was planned, measured, told and done. Times are RFC 3339 UTC.
import { z } from 'zod';
import { alarmStates, priorities, ruleIds } from '../alarms/alarm.ts';
import { profileDocumentSchema, stageNameSchema, stageNames } from '../healing/profile.ts';
import { calibrationSchema } from './calibrations.ts';
import { idSchema, timeSchema } from './common.ts';
import { logEntrySchema } from './log-entry.ts';
import { placeSchema } from './probes.ts';

const quantity = z.number().nullable();
const count = z.int().min(0);

const stageSpanSchema = z.object({ stage: stageNameSchema, startsAt: timeSchema, endsAt: timeSchema.nullable() });

/** Readings by QARTOD flag: 1 pass, 2 not evaluated, 3 suspect, 4 fail, 9 missing. */
const qualityCountsSchema = z.object({
  pass: count,
  notEvaluated: count,
  suspect: count,
  fail: count,
  missing: count,
});
export type QualityCounts = z.infer<typeof qualityCountsSchema>;

const recordBatchSchema = z.object({
  id: idSchema,
  code: z.string(),
  chamberId: idSchema,
  chamberName: z.string(),
  scion: z.string(),
  rootstock: z.string(),
  method: z.string(),
  trays: count,
  plants: count,
  openedAt: timeSchema,
  closedAt: timeSchema.nullable(),
  finishedAt: timeSchema.nullable(),
  takenPlants: count.nullable(),
  /** Taken plants of all plants, 0–1. */
  take: quantity,
});

const recordProbeSchema = z.object({
  /** What readings, gaps and alarms call the probe: its name, with its id where two share a name. */
  probe: z.string(),
  id: idSchema,
  node: z.string(),
  address: z.string(),
  place: placeSchema,
  /** When it stood there, cut to the time of the batch. */
  from: timeSchema,
  to: timeSchema,
  silenceMinutes: z.number(),
  readings: count,
  /** Of a canopy probe: hours in which its neighbours did not back it, and its furthest difference from their median, °C and %RH. */
  disagreement: z.object({ hours: z.number(), temperature: quantity, humidity: quantity }),
  lateReadings: count,
  quality: z.object({ temperature: qualityCountsSchema, humidity: qualityCountsSchema }),
  /** Those that begin before the end of this stretch, in the order in which they begin; the last of each quantity holds. */
  calibrations: z.array(calibrationSchema),
});
export type RecordProbe = z.infer<typeof recordProbeSchema>;

const spreadSchema = z.object({ mean: quantity, min: quantity, max: quantity });
const perLimitSchema = z.record(z.string(), z.number());

const recordSpanSchema = z.object({
  from: timeSchema,
  to: timeSchema,
  temperature: spreadSchema,
  humidity: spreadSchema,
  minutesAbove: perLimitSchema,
  degreeHoursAbove: perLimitSchema,
  unknownHours: z.number(),
  vpdKpaHours: z.number(),
  /** Share of the judged time inside the corridor, 0–1; null when nothing could be judged. */
  insideCorridor: z.object({ temperature: quantity, humidity: quantity }),
  /** ± of the means, °C and %RH, and of `vpdKpaHours`, from that of a usual probe; null where there is no figure. */
  plusMinus: z.object({ temperature: quantity, humidity: quantity, vpdKpaHours: quantity }),
});
const recordDaySchema = recordSpanSchema.extend({ day: z.int().min(1) });
export type RecordDay = z.infer<typeof recordDaySchema>;

/** `after-plan`: from the end of the plan on, while the batch was still in its chamber. */
export const partStages = [...stageNames, 'after-plan'] as const;
const recordStageSchema = recordSpanSchema.extend({ stage: z.enum(partStages) });
export type RecordStage = z.infer<typeof recordStageSchema>;
export type RecordSpan = z.infer<typeof recordSpanSchema>;

const recordExcursionSchema = z.object({
  quantity: z.enum(['temperature', 'humidity']),
  side: z.enum(['low', 'high']),
  from: timeSchema,
  to: timeSchema,
  minutes: z.number(),
  peak: z.number(),
  peakAt: timeSchema,
  /** °C·h or %RH·h outside the limit. */
  degreeHours: z.number(),
  endedByGap: z.boolean(),
  stillOutside: z.boolean(),
});
export type RecordExcursion = z.infer<typeof recordExcursionSchema>;

const recordAlarmSchema = z.object({
  id: z.string(),
  rule: z.enum(ruleIds),
  probe: z.string().nullable(),
  priority: z.enum(priorities),
  state: z.enum(alarmStates),
  since: timeSchema,
  occurredAt: timeSchema,
  limit: quantity,
  peak: quantity,
  peakAt: timeSchema.nullable(),
  acknowledgedAt: timeSchema.nullable(),
  acknowledgedBy: z.string().nullable(),
  returnedAt: timeSchema.nullable(),
  /** Every step of its life cycle, in order. */
  events: z.array(
    z.object({
      at: timeSchema,
      change: z.string(),
      from: z.string(),
      to: z.string(),
      /** Priority and limit as they were with this step. */
      priority: z.enum(priorities),
      limit: quantity,
      value: quantity,
      /** null = the watch itself. */
      person: z.string().nullable(),
      note: z.string(),
    }),
  ),
});
export type RecordAlarm = z.infer<typeof recordAlarmSchema>;

const recordCheckSchema = z.object({
  checkId: z.string(),
  /** null for an answer to an occasion that the plan no longer has. */
  question: z.string().nullable(),
  dueAt: timeSchema.nullable(),
  /** `missed`: overdue, and nobody answered. */
  status: z.enum(['answered', 'missed', 'due', 'to-come']),
  answer: z.enum(['yes', 'no']).nullable(),
  answeredAt: timeSchema.nullable(),
  answeredBy: z.string().nullable(),
  note: z.string(),
});
export type RecordCheck = z.infer<typeof recordCheckSchema>;

/** The note says in English what the entry is about, then what the person wrote. */
const recordLogSchema = logEntrySchema
  .omit({ check: true, stage: true, changes: true })
  .extend({ kind: z.string(), note: z.string() });
export type RecordLogEntry = z.infer<typeof recordLogSchema>;

/** A stretch longer than its silence in which nothing at all was heard from a probe. */
const recordGapSchema = z.object({ probe: z.string(), from: timeSchema, to: timeSchema, minutes: z.number() });
export type RecordGap = z.infer<typeof recordGapSchema>;

/** Everything but the readings themselves. */
export const batchRecordSchema = z.object({
  format: z.literal('takewell-batch-record'),
  formatVersion: z.literal(1),
  madeAt: timeSchema,
  /** Version of the program that made it. */
  version: z.string(),
  site: z.object({ name: z.string(), zone: z.string(), altitudeM: z.number() }),
  /** How the figures are computed, in sentences, so that they can be computed again. */
  computation: z.array(z.string()),
  batch: recordBatchSchema,
  profile: z.object({ id: idSchema, version: z.int(), document: profileDocumentSchema }),
  stages: z.object({
    /** As planned when the chamber was closed. */
    planned: z.array(stageSpanSchema),
    /** As it went, with holds and moves; what is still to come as planned now. */
    actual: z.array(stageSpanSchema),
  }),
  holds: z.array(z.object({ from: timeSchema, to: timeSchema.nullable() })),
  moves: z.array(z.object({ stage: stageNameSchema, at: timeSchema })),
  probes: z.array(recordProbeSchema),
  quality: qualityCountsSchema,
  days: z.array(recordDaySchema),
  /** The same figures per stage as it went; from closing on they add up to the whole. */
  stageFigures: z.array(recordStageSchema),
  /** From closing on; null until the chamber is closed. */
  whole: recordSpanSchema.nullable(),
  /** For how long the film was expected wet or dry since closing; unknown where it could not be told. */
  film: z.object({ wetHours: z.number(), dryHours: z.number(), unknownHours: z.number() }),
  excursions: z.array(recordExcursionSchema),
  gaps: z.array(recordGapSchema),
  alarms: z.array(recordAlarmSchema),
  checks: z.array(recordCheckSchema),
  log: z.array(recordLogSchema),
});
export type BatchRecord = z.infer<typeof batchRecordSchema>;

const recordReadingSchema = z.object({
  time: timeSchema,
  probe: z.string(),
  /** Calibrated; `rawTemperature`, `rawHumidity` are there where a calibration has changed the value. */
  temperature: quantity,
  humidity: quantity,
  temperatureFlag: z.int(),
  humidityFlag: z.int(),
  receivedAt: timeSchema,
  late: z.boolean(),
  rawTemperature: z.number().optional(),
  rawHumidity: z.number().optional(),
});

/** The document that `record.json` sends: the record and, in order of time, every reading. */
export const batchRecordDocumentSchema = batchRecordSchema.extend({ readings: z.array(recordReadingSchema) });
