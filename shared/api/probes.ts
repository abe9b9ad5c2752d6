// Nodes, probes, and messages that were refused.
import { z } from 'zod';
import { batteryUnits } from '../readings/battery.ts';
import { idSchema, nameSchema, timeSchema } from './common.ts';

export const placeSchema = z.enum(['canopy', 'film', 'house']);
export type Place = z.infer<typeof placeSchema>;

/** What is left in the battery of a node, as it told last. `unclear`: a number whose unit was not told and that may not be percent. */
export const batterySchema = z.object({ level: z.number(), unit: z.enum(batteryUnits), at: timeSchema });
export type BatteryView = z.infer<typeof batterySchema>;

export const nodeSchema = z.object({
  id: idSchema,
  status: z.enum(['online', 'offline', 'unknown']),
  statusAt: timeSchema.nullable(),
  hasCredentials: z.boolean(),
  /** Null = it has not told. */
  battery: batterySchema.nullable(),
  discoveredAt: timeSchema,
});
export type NodeView = z.infer<typeof nodeSchema>;
export const newNodeSchema = z.object({ id: idSchema });
export const nodeCredentialsSchema = z.object({ name: z.string(), password: z.string() });

/** How a node reaches the broker. */
export const brokerAddressSchema = z.object({
  isEmbedded: z.boolean(),
  /** Nodes on other machines cannot reach it. */
  isThisMachineOnly: z.boolean(),
  /** The embedded broker asks each node for a name and password of its own. */
  needsCredentials: z.boolean(),
  scheme: z.string(),
  /** Null: the address under which the page itself was opened. */
  host: z.string().nullable(),
  port: z.number().int().nullable(),
});
export type BrokerAddress = z.infer<typeof brokerAddressSchema>;

/** A probe without chamber and place is discovered: heard, kept, and waiting to be placed. `house` probes need no chamber. */
export const probeSchema = z.object({
  id: idSchema,
  nodeId: idSchema,
  address: z.string(),
  name: z.string(),
  chamberId: idSchema.nullable(),
  place: placeSchema.nullable(),
  silenceMinutes: z.number(),
  outOfService: z.boolean(),
  discoveredAt: timeSchema,
  /** That of its node; null = it has not told. */
  battery: batterySchema.nullable(),
  /**
   * Hours above 90 %RH by its good raw readings, since it was placed or its humidity corrected, at most in the last 30 days; up to an hour old.
   * Null = not counted yet.
   */
  hoursAbove90Rh: z.number().nullable(),
  last: z
    .object({
      at: timeSchema,
      /** Calibrated. */
      temperature: z.number().nullable(),
      humidity: z.number().nullable(),
      /** As the probe sent it: what a calibration is measured in. */
      rawTemperature: z.number().nullable(),
      rawHumidity: z.number().nullable(),
      temperatureFlag: z.number().int(),
      humidityFlag: z.number().int(),
    })
    .nullable(),
});
export type ProbeView = z.infer<typeof probeSchema>;

export const newProbeSchema = z.object({
  nodeId: idSchema,
  address: z.string().max(64),
  name: nameSchema.optional(),
  chamberId: idSchema.nullable().optional(),
  place: placeSchema.nullable().optional(),
});
export const probePatchSchema = z.object({
  name: nameSchema.optional(),
  chamberId: idSchema.nullable().optional(),
  place: placeSchema.nullable().optional(),
  silenceMinutes: z.number().min(1).max(240).optional(),
  outOfService: z.boolean().optional(),
});

export const refusedSchema = z.object({
  id: z.number().int(),
  at: timeSchema,
  topic: z.string(),
  /** In the language of the reader; of a message that an earlier version refused, in English. */
  reason: z.string(),
  where: z.string(),
  payloadStart: z.string(),
});
export type RefusedView = z.infer<typeof refusedSchema>;
