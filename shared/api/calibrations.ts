// The body that calibrates a probe from a date on. Measured values are raw ones: what the probe showed before any earlier correction.
import { z } from 'zod';
import type { Calibration } from '../readings/calibration.ts';
import { calibrationFaults } from '../readings/calibration-faults.ts';
import { timeSchema } from './common.ts';

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
      context.addIssue({ code: 'custom', path: where.split('/').slice(1), message: reason });
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
