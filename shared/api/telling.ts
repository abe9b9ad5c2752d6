// Where alerts go: phones of the signed-in person, settings of the site.
import { z } from 'zod';
import { topicMappingSchema } from '../readings/topic-mapping.ts';
import { idSchema, nameSchema, timeSchema } from './common.ts';

const base64url = z.string().regex(/^[A-Za-z0-9_-]+={0,2}$/);

export const newPhoneSchema = z.object({
  name: nameSchema.default('My phone'),
  subscription: z.object({
    endpoint: z.url({ protocol: /^https?$/ }),
    keys: z.object({ p256dh: base64url, auth: base64url }),
  }),
});
export const phoneSchema = z.object({
  id: idSchema,
  name: nameSchema,
  createdAt: timeSchema,
  lastResult: z.string().nullable(),
  lastResultAt: timeSchema.nullable(),
});
export type PhoneView = z.infer<typeof phoneSchema>;
/** `pushKey` is the VAPID public key the browser subscribes with. */
export const phonesSchema = z.object({ items: z.array(phoneSchema), pushKey: z.string() });
export const deliveryResultSchema = z.object({ delivered: z.boolean(), reason: z.string() });

export const siteSettingsSchema = z.object({
  siteName: nameSchema,
  zone: z.string().min(1).max(64),
  altitudeM: z.number().min(-430).max(5000),
  temperatureUnit: z.enum(['°C', '°F']),
  mappings: z.array(topicMappingSchema).max(100),
});
export type SiteSettings = z.infer<typeof siteSettingsSchema>;
