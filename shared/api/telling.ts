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
  /** The public key it subscribed with; left out = the present one. */
  pushKey: base64url.max(100).optional(),
});
export const phoneSchema = z.object({
  id: idSchema,
  name: nameSchema,
  createdAt: timeSchema,
  lastResult: z.string().nullable(),
  lastResultAt: timeSchema.nullable(),
  /** When the phone last said that it has shown a notice. */
  confirmedAt: timeSchema.nullable(),
  /** It subscribed with an earlier key: open Takewell on it once. */
  hasOldKey: z.boolean(),
});
export type PhoneView = z.infer<typeof phoneSchema>;
export const lostPhoneSchema = z.object({ id: idSchema, name: nameSchema, reason: z.string(), lostAt: timeSchema });
/**
 * `lost`: phones that were dropped because they take no more alerts, until their person has seen it. `pushKey` is the VAPID public key the
 * browser subscribes with; `publicUrl` the address people use, as set.
 */
export const phonesSchema = z.object({
  items: z.array(phoneSchema),
  lost: z.array(lostPhoneSchema),
  pushKey: z.string(),
  publicUrl: z.string().nullable(),
});
export type PhonesView = z.infer<typeof phonesSchema>;
/** `delivered` = the other side has it, since `at`. Only a phone says that it has shown it. */
export const deliveryResultSchema = z.object({ delivered: z.boolean(), reason: z.string(), at: timeSchema });
export type DeliveryResult = z.infer<typeof deliveryResultSchema>;

export const receiptSchema = z.object({ noticeId: z.string().min(1).max(300), secret: z.string().min(1).max(100) });

/** To the signed-in person: by e-mail, or through a webhook as they would be told by it. The siren sounds for five seconds; the heartbeat is sent once. */
export const channelTestSchema = z.discriminatedUnion('channel', [
  z.object({ channel: z.literal('email') }),
  z.object({ channel: z.literal('webhook'), webhookId: idSchema }),
  z.object({ channel: z.literal('siren') }),
  z.object({ channel: z.literal('heartbeat') }),
]);
export type ChannelTest = z.infer<typeof channelTestSchema>;

export const siteSettingsSchema = z.object({
  siteName: nameSchema,
  zone: z.string().min(1).max(64),
  altitudeM: z.number().min(-430).max(5000),
  temperatureUnit: z.enum(['°C', '°F']),
  mappings: z.array(topicMappingSchema).max(100),
});
export type SiteSettings = z.infer<typeof siteSettingsSchema>;
