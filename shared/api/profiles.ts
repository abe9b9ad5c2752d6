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
