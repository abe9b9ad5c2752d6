// Profiles and their versions.
import { z } from 'zod';
import { profileDocumentSchema } from '../healing/profile.ts';
import { idSchema, timeSchema } from './common.ts';

export const profileSchema = z.object({
  id: idSchema,
  version: z.number().int(),
  createdAt: timeSchema,
  createdBy: z.string(),
  document: profileDocumentSchema,
});
export type ProfileView = z.infer<typeof profileSchema>;
export const newProfileSchema = z.object({ id: idSchema, document: z.unknown() });
export const newProfileVersionSchema = z.object({ document: z.unknown() });

/** Any JSON at all, as a file holds it. */
export const profileCheckBodySchema = z.object({ document: z.unknown() });
export const profileVerdictSchema = z.object({
  /** The profile with its defaults filled in; null when there is any fault. */
  document: profileDocumentSchema.nullable(),
  faults: z.array(z.object({ where: z.string(), reason: z.string() })),
});
export type ProfileVerdictView = z.infer<typeof profileVerdictSchema>;
