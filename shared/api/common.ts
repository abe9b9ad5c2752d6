// Shapes used by several HTTP bodies: ids, times, lists. Times are RFC 3339 UTC; °C and %RH carry no unit in their name.

import { z } from 'zod';
import { shapes } from '../words/en/shapes.ts';

export const idSchema = z
  .string()
  .min(1)
  .max(64)
  .regex(/^[A-Za-z0-9._~-]+$/);

export const timeSchema = z.iso.datetime({
  offset: true,
  error: shapes.writeTime,
});

export const nameSchema = z.string().trim().min(1, shapes.giveName).max(80, shapes.nameLong);

export const pageQuerySchema = z.object({
  limit: z.coerce.number().int().min(1).max(500).default(100),
  cursor: z.string().max(200).optional(),
});

/** A list as it is sent: `nextCursor` is null on the last page. */
export function listOf<T extends z.ZodType>(item: T) {
  return z.object({ items: z.array(item), nextCursor: z.string().nullable() });
}

/** RFC 9457 problem details. */
export const problemSchema = z.object({
  type: z.string(),
  title: z.string(),
  status: z.number().int(),
  detail: z.string(),
  faults: z.array(z.object({ where: z.string(), reason: z.string() })).optional(),
});
export type ProblemDetails = z.infer<typeof problemSchema>;
