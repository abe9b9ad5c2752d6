// The keys the site signs its pushes with: made once, kept in the store and so in every backup. Every phone is bound to the public one,
// so they are never made anew while any are kept: that would silence all phones without a word.
import webPush from 'web-push';
import { z } from 'zod';
import { Problem } from '../../shared/problem.ts';
import type { Store } from '../store/store.ts';

export interface VapidKeys {
  /** base64url; browsers subscribe with it. */
  readonly publicKey: string;
  /** base64url; never leaves the process. */
  readonly privateKey: string;
  /** Whom a push service may write to, RFC 8292 §2.1. */
  readonly subject: string;
}

const keysSchema = z.object({
  publicKey: z.string().regex(/^[A-Za-z0-9_-]{87}$/),
  privateKey: z.string().regex(/^[A-Za-z0-9_-]{43}$/),
});

interface VapidOwner {
  /** The address people use. */
  readonly publicUrl: string;
  /** `mailto:` address for a site without an https one. */
  readonly contact: string;
}

/** The site's keys; makes and keeps them at the first start. Throws a Problem `bad-setting` when what is kept cannot be read. */
export async function openVapidKeys(settings: Store['settings'], owner: VapidOwner): Promise<VapidKeys> {
  const kept = await settings.get('vapid');
  if (kept === undefined || kept === null) {
    const made = webPush.generateVAPIDKeys();
    await settings.put('vapid', made);
    return { ...made, subject: subjectOf(owner) };
  }
  const read = keysSchema.safeParse(kept);
  if (!read.success)
    throw Problem.forOperator('bad-setting', 'The push keys in the store cannot be read: restore them from a backup.');
  return { ...read.data, subject: subjectOf(owner) };
}

/** The site's https address, else the contact: push services accept nothing else, and one of them refuses localhost. */
export function subjectOf({ publicUrl, contact }: VapidOwner): string {
  const url = URL.canParse(publicUrl) ? new URL(publicUrl) : null;
  return url?.protocol === 'https:' && url.hostname !== 'localhost' ? url.origin : contact;
}
