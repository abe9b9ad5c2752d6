// Health of the service, readable without signing in: it names no batch and no person.
import { z } from 'zod';

export const healthSchema = z.object({
  live: z.boolean(),
  ready: z.boolean(),
  version: z.string(),
  problems: z.array(z.object({ code: z.string(), detail: z.string() })),
});
export type Health = z.infer<typeof healthSchema>;
