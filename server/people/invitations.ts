// Inviting people: a secret that is handed out once, works once, and only for two days.
import { nanoid } from 'nanoid';
import type { Role } from '../../shared/api/session.ts';
import { Problem } from '../../shared/problem.ts';
import { HOUR_MS } from '../../shared/units.ts';
import type { Clock } from '../clock.ts';
import type { Invitation, NewPerson, Store } from '../store/store.ts';
import { hashPassword } from './passwords.ts';
import { hashSecret, makeSecret } from './secrets.ts';

/** Long enough for a weekend's day off, short enough that a link left in a chat is of no use later; ours. */
export const INVITATION_MS = 48 * HOUR_MS;

const used = () => new Problem('not-found', ({ problems }) => problems.invitationUseless);

export function createInvitations({ store, clock }: { readonly store: Store; readonly clock: Clock }) {
  return {
    /** Makes one; `madeBy` is the person who invites, null for a token of a machine. The secret is not kept. */
    async make(wanted: { name: string; role: Role; madeBy: string | null }) {
      const secret = makeSecret();
      const createdMs = clock.nowMs();
      const invitation = { id: nanoid(10), ...wanted, createdMs, expiresMs: createdMs + INVITATION_MS };
      await store.invitations.add(invitation, hashSecret(secret));
      return { invitation, secret };
    },
    /** The invitation behind a secret. Throws a Problem `not-found` when it cannot be used any more. */
    async look(secret: string): Promise<Invitation> {
      const invitation = await store.invitations.bySecret(hashSecret(secret), clock.nowMs());
      if (invitation === null) throw used();
      return invitation;
    },
    /** Makes the person, with the role of the invitation, and uses it up; both or neither. */
    async accept(secret: string, name: string, password: string): Promise<NewPerson> {
      const { role } = await this.look(secret);
      if ((await store.people.byName(name)) !== null) {
        throw new Problem('conflict', ({ problems }) => problems.nameTaken, {
          faults: [{ where: 'name', reason: ({ problems }) => problems.nameTaken }],
        });
      }
      const passwordHash = await hashPassword(password);
      const person: NewPerson = { id: nanoid(10), name, role, passwordHash, createdMs: clock.nowMs() };
      if (!(await store.invitations.accept(hashSecret(secret), person))) throw used();
      return person;
    },
  };
}
