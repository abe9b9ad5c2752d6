// Checks a profile that someone wrote: its shape, and the rules a shape cannot say. It changes nothing in it.
import type { Fault } from '../problem.ts';
import { checkFaults } from './check-faults.ts';
import { limitFaults } from './limit-faults.ts';
import { type ProfileDocument, profileDocumentSchema } from './profile.ts';
import { readProfileParts } from './profile-parts.ts';
import { shapeFaults } from './shape-faults.ts';
import { stageFaults } from './stage-faults.ts';

export interface ProfileVerdict {
  /** The profile with its defaults filled in; null when there is any fault. */
  readonly document: ProfileDocument | null;
  /** Every fault with its place as a JSON Pointer (RFC 6901). */
  readonly faults: readonly Fault[];
}

/** All faults of a candidate profile, never only the first; anything at all may be given. The rules look at every part that can be read. */
export function findProfileFaults(candidate: unknown): ProfileVerdict {
  const shape = profileDocumentSchema.safeParse(candidate);
  const parts = readProfileParts(candidate);
  const faults = [
    ...shapeFaults(shape.error?.issues ?? [], candidate),
    ...stageFaults(parts),
    ...parts.stages.flatMap(limitFaults),
    ...checkFaults(parts),
  ];
  return { document: faults.length === 0 ? (shape.data ?? null) : null, faults };
}
