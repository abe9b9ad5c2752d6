// Calibrating a probe from a date on, and its history as it is sent. Measured values are raw ones: what the probe showed before any earlier correction.

import { z } from 'zod';
import type { Calibration } from '../readings/calibration.ts';
import { calibrationFaults } from '../readings/calibration-faults.ts';
import { english } from '../words/en/english.ts';
import { idSchema, timeSchema } from './common.ts';

const finite = z.number().finite();
const offsetSchema = z.strictObject({ offset: finite.describe('Added to the raw value, °C or %RH') });
const pointSchema = z.strictObject({
  reference: finite.describe('True %RH, for example of a salt solution'),
  measured: finite.describe('Raw %RH of the probe there'),
});
const everyKind = {
  /** From when it holds; without it, from now. */
  from: timeSchema.optional(),
  temperature: offsetSchema.optional(),
  note: z.string().trim().max(1000).default(''),
};

export const calibrationBodySchema = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('offset'), ...everyKind, humidity: offsetSchema.optional() }),
    z.strictObject({ kind: z.literal('two-point'), ...everyKind, humidity: z.tuple([pointSchema, pointSchema]) }),
  ])
  .superRefine((body, context) => {
    for (const { where, reason } of calibrationFaults(readCalibration(body, 0))) {
      context.addIssue({
        code: 'custom',
        path: where.split('/').slice(1),
        message: reason(english),
        params: { say: reason },
      });
    }
  });
export type CalibrationBody = z.infer<typeof calibrationBodySchema>;

/** The entry of the history that a body makes; `nowMs` is when it holds from if the body does not say. */
export function readCalibration(body: CalibrationBody, nowMs: number): Calibration {
  const { temperature } = body;
  const fromMs = body.from === undefined ? nowMs : Date.parse(body.from);
  if (body.kind === 'two-point') return { kind: body.kind, fromMs, temperature, humidity: body.humidity };
  return { kind: body.kind, fromMs, temperature, humidity: body.humidity };
}

const entered = {
  id: idSchema,
  from: timeSchema,
  temperature: offsetSchema.nullable(),
  note: z.string(),
  enteredAt: timeSchema,
  enteredBy: z.string(),
};

/** An entry of the history. `temperature` or `humidity` null: the entry leaves that quantity as the ones before it. */
export const calibrationSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('offset'), ...entered, humidity: offsetSchema.nullable() }),
  z.object({ kind: z.literal('two-point'), ...entered, humidity: z.tuple([pointSchema, pointSchema]) }),
]);
export type CalibrationView = z.infer<typeof calibrationSchema>;
