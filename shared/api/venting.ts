// What to do with the gap next: a proposal with what it rests on, or why there is none.
import { z } from 'zod';
import { idSchema, timeSchema } from './common.ts';

export const ventPhases = ['before', 'near', 'under-way', 'over'] as const;
const shortReasons = ['grace', 'experience', 'certainty'] as const;
export const limpActs = ['close', 'mist', 'hold'] as const;

const proposalSchema = z.object({
  gapPercent: z.number(),
  /** The gap it stands at. */
  fromPercent: z.number(),
  /** %RH where it settles, and ± for about 95 %. */
  expectedHumidity: z.number(),
  plusMinus: z.number(),
  settlesInMinutes: z.number(),
  /** The fall in the first hour, %RH. */
  dryingRatePerHour: z.number(),
  /**
   * Why this is a part of the way only: the whole step would dry the plants faster than the profile allows, a wider gap was never tried, or is
   * not sure enough. Null where it reaches the step.
   */
  shortBy: z.enum(shortReasons).nullable(),
});

const leftOutSchema = z.object({ gapPercent: z.number(), at: timeSchema, why: z.string(), reason: z.string() });

const fitSchema = z.object({
  at: timeSchema,
  readings: z.number().int(),
  windows: z.number().int(),
  /** Of the worst window. */
  r2: z.number(),
  /** A gap that was tried, with its rate in 1/h. */
  levels: z.array(
    z.object({
      gapPercent: z.number(),
      ratePerHour: z.number(),
      standardError: z.number(),
      interval: z.object({ low: z.number(), high: z.number() }),
      r2: z.number(),
      readings: z.number().int(),
      windows: z.number().int(),
    }),
  ),
  /** What plants, trays and film give off: conductance in 1/h, and kg of water to 1 kg of dry air in an hour at the end of the newest window. */
  source: z.object({
    conductancePerHour: z.number(),
    standardError: z.number(),
    perHour: z.number(),
    from: timeSchema,
    to: timeSchema,
  }),
});

export const ventingSchema = z.object({
  batchId: idSchema,
  at: timeSchema,
  /** Near: venting begins within half a day. */
  phase: z.enum(ventPhases),
  gapPercent: z.number().nullable(),
  /** The step of the humidity corridor to come to, and from when the air may go there. */
  step: z.object({ low: z.number(), high: z.number(), opensAt: timeSchema }).nullable(),
  proposal: proposalSchema.nullable(),
  /** Why there is no proposal, as a word for programs; null where there is one. */
  why: z.string().nullable(),
  /** The proposal, or why there is none and what to do, as a sentence in the language of who asks. */
  reason: z.string(),
  /** Scions were reported limp: what to do, in this order. */
  limp: z.object({ since: timeSchema, acts: z.array(z.enum(limpActs)), backToPercent: z.number() }).nullable(),
  /** The last widening of the gap after which nobody has said whether the scions stand. */
  askErect: z.object({ gapPercent: z.number(), since: timeSchema }).nullable(),
  fit: fitSchema.nullable(),
  /** Changes of the gap that say nothing, and why. */
  leftOut: z.array(leftOutSchema),
});
export type VentingView = z.infer<typeof ventingSchema>;
