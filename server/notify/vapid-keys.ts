// The keys the site signs its pushes with: made at the first start, kept in the store and so in every backup. Every phone is bound to the
// public one it subscribed with, so earlier ones are kept and go on signing for the phones that have not subscribed anew.
import { createHmac, timingSafeEqual } from 'node:crypto';
import webPush from 'web-push';
import { z } from 'zod';
import { Problem } from '../../shared/problem.ts';
import type { Store } from '../store/store.ts';

export interface KeyPair {
  /** base64url; browsers subscribe with it. */
  readonly publicKey: string;
  /** base64url; never leaves the process. */
  readonly privateKey: string;
}

export interface VapidKeys {
  /** The key that browsers subscribe with now. */
  readonly publicKey: string;
  /** The pair that a phone subscribed with (null = the first of the site); null when it is kept no more. */
  pairOf(pushKey: string | null): KeyPair | null;
  /** Whom a push service may write to, RFC 8292 §2.1. */
  subject(): string;
  /** The secret that only the phone of a notice gets: with it the phone says that it has shown it. */
  receiptOf(noticeId: string): string;
  isReceipt(noticeId: string, secret: string): boolean;
}

const pairSchema = z.object({
  publicKey: z.string().regex(/^[A-Za-z0-9_-]{87}$/),
  privateKey: z.string().regex(/^[A-Za-z0-9_-]{43}$/),
});
/** `earlier`: the newest first. */
const keysSchema = pairSchema.extend({ earlier: z.array(pairSchema).default([]) });
type KeptKeys = z.infer<typeof keysSchema>;

const VAPID_SETTING = 'vapid';

/** The site's keys; makes and keeps them at the first start. Throws a Problem `bad-setting` when what is kept cannot be read. */
export async function openVapidKeys(settings: Store['settings'], subject: () => string): Promise<VapidKeys> {
  const kept = (await readKeys(settings)) ?? { ...webPush.generateVAPIDKeys(), earlier: [] };
  if ((await settings.get(VAPID_SETTING)) === undefined) await settings.put(VAPID_SETTING, kept);
  const pairs = [{ publicKey: kept.publicKey, privateKey: kept.privateKey }, ...kept.earlier];
  const first = pairs.at(-1) ?? kept;
  const receiptOf = (noticeId: string) =>
    createHmac('sha256', first.privateKey).update(`receipt ${noticeId}`).digest('base64url').slice(0, 22);
  return {
    publicKey: kept.publicKey,
    pairOf: (pushKey) => (pushKey === null ? first : (pairs.find(({ publicKey }) => publicKey === pushKey) ?? null)),
    subject,
    receiptOf,
    isReceipt: (noticeId, secret) => isSame(receiptOf(noticeId), secret),
  };
}

/** Makes new keys; the earlier ones stay for the phones that subscribed with them, unless they are to be forgotten. Counts at the next start. */
export async function changeVapidKeys(settings: Store['settings'], forgetEarlier: boolean): Promise<string> {
  const kept = await readKeys(settings);
  const made = webPush.generateVAPIDKeys();
  const earlier = kept === null || forgetEarlier ? [] : [pairSchema.parse(kept), ...kept.earlier];
  await settings.put(VAPID_SETTING, { ...made, earlier });
  return made.publicKey;
}

async function readKeys(settings: Store['settings']): Promise<KeptKeys | null> {
  const kept = await settings.get(VAPID_SETTING);
  if (kept === undefined || kept === null) return null;
  const read = keysSchema.safeParse(kept);
  if (read.success) return read.data;
  throw Problem.forOperator('bad-setting', 'The push keys in the store cannot be read: restore them from a backup.');
}

interface Contacts {
  /** As set; null = not set. */
  readonly contact: string | null;
  readonly publicUrl: string | null;
  /** Sender of the site's mails; null = no e-mail. */
  readonly sender: string | null;
}

/** The first that a push service could write to. Without any a name under .invalid (RFC 2606), which says that nobody has set one. */
export function subjectOf({ contact, publicUrl, sender }: Contacts): string {
  if (contact !== null) return contact;
  const url = publicUrl !== null && URL.canParse(publicUrl) ? new URL(publicUrl) : null;
  // Push services accept nothing but https here, and one of them refuses localhost.
  if (url?.protocol === 'https:' && url.hostname !== 'localhost') return url.origin;
  return `mailto:${sender ?? 'not-set@takewell.invalid'}`;
}

function isSame(expected: string, given: string): boolean {
  const [a, b] = [Buffer.from(expected), Buffer.from(given)];
  return a.length === b.length && timingSafeEqual(a, b);
}
