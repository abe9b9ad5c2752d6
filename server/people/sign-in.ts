// Who is asking: first manager, sign-in, sessions, tokens of machines.
import { nanoid } from 'nanoid';
import { Problem } from '../../shared/problem.ts';
import { DAY_MS } from '../../shared/units.ts';
import type { Clock } from '../clock.ts';
import type { NewPerson, Person, Store } from '../store/store.ts';
import { hashPassword, verifyPassword } from './passwords.ts';
import { withoutDetails } from './person-details.ts';
import { hashSecret, isSameText, makeSecret } from './secrets.ts';

/** Somebody who watches a wall screen is not asked again every week. */
export const SESSION_MS = 90 * DAY_MS;

interface SignInParts {
  readonly store: Store;
  readonly clock: Clock;
  /** The code that the first set-up expects. */
  readonly setupCode: string;
}

export type SignIn = ReturnType<typeof createSignIn>;

export function createSignIn({ store, clock, setupCode }: SignInParts) {
  // Verified when the name is unknown, so that the answer takes as long as for a known one.
  const nobody = hashPassword(makeSecret());
  const startSession = async (person: Person): Promise<string> => {
    const secret = makeSecret();
    const createdMs = clock.nowMs();
    const expiresMs = createdMs + SESSION_MS;
    await store.people.addSession({ tokenHash: hashSecret(secret), personId: person.id, createdMs, expiresMs });
    return secret;
  };
  return {
    async setUp(code: string, name: string, password: string): Promise<{ person: Person; session: string }> {
      if (!isSameText(code, setupCode)) {
        throw new Problem('not-allowed', ({ problems }) => problems.wrongSetUpCode);
      }
      const passwordHash = await hashPassword(password);
      const row: NewPerson = { id: nanoid(10), name, role: 'manager', passwordHash, createdMs: clock.nowMs() };
      if (!(await store.people.addFirst(row))) {
        throw new Problem('conflict', ({ problems }) => problems.alreadySetUp);
      }
      const person = withoutDetails(row);
      return { person, session: await startSession(person) };
    },
    async signIn(name: string, password: string): Promise<{ person: Person; session: string }> {
      const person = await store.people.byName(name);
      const isRight = await verifyPassword(person?.passwordHash ?? (await nobody), password);
      if (person === null || !isRight)
        throw new Problem('not-signed-in', ({ problems }) => problems.wrongNameOrPassword);
      return { person, session: await startSession(person) };
    },
    bySession: (session: string) => store.people.bySession(hashSecret(session), clock.nowMs()),
    byToken: (token: string) => store.people.byToken(hashSecret(token)),
    signOut: (session: string) => store.people.endSession(hashSecret(session)),
  };
}
