// How alerts leave the site: mail server, webhooks, siren, heartbeat. Three shapes: as it is kept, as it is changed, as it is shown;
// secrets are written and kept, never shown.
import { z } from 'zod';
import { isHeaderName } from '../telling/header-name.ts';
import { shapes } from '../words/en/shapes.ts';
import { idSchema, nameSchema } from './common.ts';

/** The name under which the channels are kept in the store. */
export const CHANNELS_SETTING = 'channels';

const MOST_WEBHOOKS = 10;
const secretSchema = z.string().max(500);
const webAddressSchema = z.url({ protocol: /^https?$/, error: shapes.writeAddress }).max(2_000);
const hostSchema = z
  .string()
  .trim()
  .min(1, shapes.nameMailServer)
  .max(253)
  .regex(/^[A-Za-z0-9.:_-]+$/, shapes.onlyHostName);

const emailParts = z.object({
  host: hostSchema,
  port: z.int().min(1).max(65_535),
  /** `starttls`: begins readable and must change to TLS; `tls`: TLS from the first byte; `none`: for a relay that is nobody else's to read. */
  security: z.enum(['starttls', 'tls', 'none']),
  user: z.string().max(200).optional(),
  from: z.email(shapes.writeEmail).max(254),
});

const webhookParts = z.object({
  name: nameSchema,
  url: webAddressSchema,
  /** Allows an address that names this machine or a link-local one. */
  allowLocal: z.boolean().default(false),
  /** `site` gets each notice once; `each-person` once for each person to be told, in their words. */
  audience: z.enum(['site', 'each-person']).default('site'),
  contentType: z.enum(['json', 'form']).default('json'),
  /** Body with `{{field}}`s in it; '' = the whole notice as JSON. */
  template: z.string().max(4_000).default(''),
});

const headerNameSchema = z.string().refine(isHeaderName, shapes.otherHeader);

const heartbeatSchema = z.object({ url: webAddressSchema, allowLocal: z.boolean().default(false) });

/** Whom a push service may write to (RFC 8292 §2.1). */
const contactSchema = z.url({
  protocol: /^(mailto|https)$/,
  error: shapes.writeContact,
});

const webhookSchema = webhookParts.extend({
  id: idSchema,
  /** Signs the body, HMAC-SHA-256. */
  secret: secretSchema.optional(),
  /** Sent along, such as the key of a gateway. */
  headers: z.array(z.object({ name: headerNameSchema, value: secretSchema })).default([]),
});
export type Webhook = z.infer<typeof webhookSchema>;

const emailSchema = emailParts.extend({ password: secretSchema.optional() });
export type EmailSettings = z.infer<typeof emailSchema>;

/** As it is kept. */
export const channelsSchema = z.object({
  email: emailSchema.nullable().default(null),
  webhooks: z.array(webhookSchema).max(MOST_WEBHOOKS).default([]),
  siren: z.object({ enabled: z.boolean() }).default({ enabled: true }),
  heartbeat: heartbeatSchema.nullable().default(null),
  contact: contactSchema.nullable().default(null),
});
export type Channels = z.infer<typeof channelsSchema>;

/** Nothing is set up: alerts go to phones and to the siren topic. */
export const noChannels: Channels = channelsSchema.parse({});

const headerChange = z.object({
  name: headerNameSchema,
  value: secretSchema.regex(/^[\t\x20-\x7e]*$/, shapes.plainLetters).optional(),
});

/** As it is changed. What is not named stays: a part, a secret, the value of a header. An empty secret is taken away. */
export const channelsChangeSchema = z.object({
  email: emailSchema
    .refine(({ security, user }) => security !== 'none' || !user, {
      path: ['security'],
      error: shapes.readablePassword,
    })
    .nullable()
    .optional(),
  webhooks: z
    .array(
      webhookParts.extend({
        id: idSchema.optional(),
        secret: secretSchema.optional(),
        headers: z.array(headerChange).max(10).default([]),
      }),
    )
    .max(MOST_WEBHOOKS, shapes.fewerWebhooks)
    .optional(),
  siren: z.object({ enabled: z.boolean() }).optional(),
  heartbeat: heartbeatSchema.nullable().optional(),
  contact: contactSchema.nullable().optional(),
});
export type ChannelsChange = z.infer<typeof channelsChangeSchema>;

/** As it is shown. */
export const channelsViewSchema = z.object({
  email: emailParts.extend({ hasPassword: z.boolean() }).nullable(),
  webhooks: z.array(
    webhookParts.extend({ id: idSchema, hasSecret: z.boolean(), headers: z.array(z.object({ name: z.string() })) }),
  ),
  siren: z.object({ enabled: z.boolean() }),
  heartbeat: heartbeatSchema.nullable(),
  contact: contactSchema.nullable(),
});
export type ChannelsView = z.infer<typeof channelsViewSchema>;
