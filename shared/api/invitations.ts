// Inviting a person by a link that works once: made by a manager, looked at and taken up by the one who is invited.
import { z } from 'zod';
import { idSchema, nameSchema, timeSchema } from './common.ts';
import { passwordSchema, roleSchema } from './session.ts';

const secretSchema = z.string().min(1).max(200);

export const newInvitationSchema = z.object({
  /** Proposed to the one who is invited, who may write another; '' = none. */
  name: z.union([z.literal(''), nameSchema]).default(''),
  role: roleSchema,
});
export const invitationSchema = z.object({
  id: idSchema,
  name: z.string(),
  role: roleSchema,
  createdAt: timeSchema,
  expiresAt: timeSchema,
});
export type InvitationView = z.infer<typeof invitationSchema>;

/** The secret is shown once; it belongs behind the # of the address, which a browser sends to nobody. */
export const createdInvitationSchema = invitationSchema.extend({ secret: z.string() });
export type CreatedInvitation = z.infer<typeof createdInvitationSchema>;

export const lookAtInvitationSchema = z.object({ secret: secretSchema });
export const acceptInvitationSchema = z.object({ secret: secretSchema, name: nameSchema, password: passwordSchema });
export const acceptedInvitationSchema = z.object({ name: z.string(), role: roleSchema });
