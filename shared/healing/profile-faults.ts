// Checks a profile that someone wrote: its shape, and the rules a shape cannot say. It changes nothing in it.
import type { Fault } from '../problem.ts';
import { type ProfileDocument, profileDocumentSchema } from './profile.ts';
import { readProfileParts } from './profile-parts.ts';
import { ruleFaults } from './rule-faults.ts';
import { sayPlanFault } from './say-plan-fault.ts';
import { shapeFaults } from './shape-faults.ts';

export interface ProfileVerdict {
  /** The profile with its defaults filled in; null when there is any fault. */
  readonly document: ProfileDocument | null;
  /** Every fault with its place as a JSON Pointer (RFC 6901). */
  readonly faults: readonly Fault[];
}

/** All faults of a candidate profile, never only the first; anything at all may be given. The rules look at every part that can be read. */
export function findProfileFaults(candidate: unknown): ProfileVerdict {
  const shape = profileDocumentSchema.safeParse(candidate);
  const faults = [
    ...shapeFaults(shape.error?.issues ?? [], candidate),
    ...ruleFaults(readProfileParts(candidate)).map(sayPlanFault),
  ];
  return { document: faults.length === 0 ? (shape.data ?? null) : null, faults };
}
