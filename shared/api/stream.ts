// Events of GET /api/v1/stream. A client that missed some reconnects and asks for everything anew: events are hints, the store is the truth.
import { z } from 'zod';
import { alarmSchema } from './alarms.ts';
import { climateNowSchema, corridorSchema } from './chambers.ts';
import { idSchema, timeSchema } from './common.ts';

export const streamEventSchema = z.discriminatedUnion('event', [
  /** First event of every connection. */
  z.object({ event: z.literal('hello'), at: timeSchema }),
  /** Nothing new, still here: a reader that hears nothing for a minute knows that its connection is dead. */
  z.object({ event: z.literal('pulse'), at: timeSchema }),
  z.object({
    event: z.literal('climate'),
    at: timeSchema,
    chamberId: idSchema,
    climate: climateNowSchema,
    limits: corridorSchema.nullable(),
  }),
  z.object({ event: z.literal('alarm'), at: timeSchema, alarm: alarmSchema }),
  /** Something about this chamber or its batch changed: ask for them again. */
  z.object({ event: z.literal('batch'), at: timeSchema, chamberId: idSchema, batchId: idSchema.nullable() }),
  /** Whom alerts reach may have changed: ask again. */
  z.object({ event: z.literal('reach'), at: timeSchema }),
  z.object({ event: z.literal('probe'), at: timeSchema, probeId: idSchema }),
]);
export type StreamEvent = z.infer<typeof streamEventSchema>;
