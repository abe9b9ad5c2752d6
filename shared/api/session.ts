// First set-up, sign-in and people.

import { z } from 'zod';
import { languages } from '../languages.ts';
import { shapes } from '../words/en/shapes.ts';
import { idSchema, nameSchema, timeSchema } from './common.ts';

export const roles = ['viewer', 'crew', 'manager'] as const;
export const roleSchema = z.enum(roles);
export type Role = z.infer<typeof roleSchema>;

export const passwordSchema = z.string().min(10, shapes.passwordShort).max(200, shapes.passwordLong);

export const setupBodySchema = z.object({
  code: z.string().min(1).max(200),
  name: nameSchema,
  password: passwordSchema,
});
export const signInBodySchema = z.object({ name: nameSchema, password: z.string().max(200) });

export const timeOfDaySchema = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, shapes.writeClock);

/** How a person is reached and spoken to; null = not told: the language of the browser, the unit of the site. */
export const personDetailsSchema = z.object({
  email: z.email().max(254).nullable(),
  /** E.164, for gateways that send text messages. */
  phoneNumber: z
    .string()
    .regex(/^\+[1-9]\d{6,14}$/, shapes.writePhone)
    .nullable(),
  language: z.enum(languages).nullable(),
  temperatureUnit: z.enum(['°C', '°F']).nullable(),
  /** Times of day on the clock of the site, between which low priorities wait. Both or neither. */
  quietFrom: timeOfDaySchema.nullable(),
  quietTo: timeOfDaySchema.nullable(),
});
export type PersonDetails = z.infer<typeof personDetailsSchema>;
export const personSchema = personDetailsSchema.extend({
  id: idSchema,
  name: nameSchema,
  role: roleSchema,
  createdAt: timeSchema,
});
export type Person = z.infer<typeof personSchema>;

/** `needsSetup` is true until the first manager exists. */
export const sessionSchema = z.object({
  person: personSchema.nullable(),
  needsSetup: z.boolean(),
  siteName: z.string(),
  zone: z.string(),
  temperatureUnit: z.enum(['°C', '°F']),
  demo: z.boolean(),
});
export type Session = z.infer<typeof sessionSchema>;

export const newPersonSchema = z.object({ name: nameSchema, role: roleSchema, password: passwordSchema });
export const ownPatchSchema = personDetailsSchema.partial();
export const personPatchSchema = ownPatchSchema.extend({
  role: roleSchema.optional(),
  password: passwordSchema.optional(),
});

export const newTokenSchema = z.object({ name: nameSchema, scope: z.enum(['read', 'full']) });
export const tokenSchema = z.object({
  id: idSchema,
  name: nameSchema,
  scope: z.enum(['read', 'full']),
  createdAt: timeSchema,
});
export type TokenView = z.infer<typeof tokenSchema>;
export const createdTokenSchema = tokenSchema.extend({ token: z.string() });
