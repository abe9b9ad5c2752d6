// What finished batches teach: take with its interval beside exposure, and batches laid over each other by healing time.

import { z } from 'zod';
import { strengths } from '../learning/association.ts';
import { shapes } from '../words/en/shapes.ts';
import { idSchema, timeSchema } from './common.ts';

const quantity = z.number().nullable();
const column = z.array(quantity);

const learnedBatchSchema = z.object({
  id: idSchema,
  code: z.string(),
  chamberName: z.string(),
  scion: z.string(),
  rootstock: z.string(),
  closedAt: timeSchema,
  finishedAt: timeSchema,
  plants: z.number().int(),
  takenPlants: z.number().int(),
  /** Share of plants taken with its 95 % Wilson interval, 0–1. It tells what the count can; trays and crews differ by more. */
  take: z.object({ share: z.number(), low: z.number(), high: z.number() }),
  /** By name; null = too much of the time is unknown. */
  exposures: z.record(z.string(), quantity),
  unknownHours: z.number(),
});
export type LearnedBatch = z.infer<typeof learnedBatchSchema>;

const associationSchema = z.object({
  exposure: z.string(),
  /** Batches in which the exposure is known. */
  batches: z.number().int(),
  /** Kendall's τ-b: above 0, more of it goes with more loss. */
  tau: quantity,
  p: quantity,
  /** For all exposures that were looked at (Holm). */
  adjustedP: quantity,
  /** Pairs of batches in which more of it went with more loss, with less, or with neither. */
  pairs: z.object({ concordant: z.number().int(), discordant: z.number().int(), tied: z.number().int() }),
  strength: z.enum(strengths),
});
export type LearnedAssociation = z.infer<typeof associationSchema>;

export const learningSchema = z.object({
  /** Finished, with a take, the newest first. */
  batches: z.array(learnedBatchSchema),
  /** Strongest first; empty while some batches are still to be measured. None of them says that one causes the other. */
  associations: z.array(associationSchema),
  /** Batches that are still to be measured: ask again. */
  pending: z.number().int(),
});
export type LearningView = z.infer<typeof learningSchema>;

const longestList = 8;
export const overlayQuerySchema = z.object({
  /** Ids with commas between; the first gives the corridor. */
  ids: z
    .string()
    .max(600)
    .transform((text) => [...new Set(text.split(',').filter((id) => id !== ''))])
    .pipe(z.array(idSchema).min(1, shapes.nameBatch).max(longestList, shapes.fewerBatches)),
  points: z.coerce.number().int().min(10).max(1000).default(240),
});

/** Cell i covers [i·stepHours, +stepHours) after closing; every column has one entry a cell, null where less than half of it is known. */
export const overlaySchema = z.object({
  stepHours: z.number(),
  /** Middle of each cell, h after closing. */
  hours: z.array(z.number()),
  batches: z.array(
    z.object({
      id: idSchema,
      code: z.string(),
      closedAt: timeSchema,
      temperature: column,
      humidity: column,
    }),
  ),
  /** Of the first batch, as its plan went. */
  corridor: z.object({
    temperature: z.object({ low: column, high: column }),
    humidity: z.object({ low: column, high: column }),
  }),
});
export type OverlayView = z.infer<typeof overlaySchema>;
