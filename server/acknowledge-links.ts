// Links in messages that acknowledge one alarm, once, without signing in. The secret is 256 bits of chance; only its hash is kept. Looking at
// one changes nothing: mail programs and chats open every link they see.
import { randomBytes } from 'node:crypto';
import type { Alarm } from '../shared/alarms/alarm.ts';
import { roles } from '../shared/api/session.ts';
import { Problem } from '../shared/problem.ts';
import { HOUR_MS } from '../shared/units.ts';
import type { Clock } from './clock.ts';
import { hashSecret } from './people/secrets.ts';
import type { AcknowledgeLink, NewLink, Person, Store } from './store/store.ts';
import type { Rounds } from './watch/rounds.ts';

/** As long as an alert is news. */
const LIFE_MS = 6 * HOUR_MS;

export interface SeenLink {
  readonly link: AcknowledgeLink;
  readonly alarm: Alarm;
  readonly chamberName: string | null;
  /** null = made for a program. */
  readonly person: Person | null;
}

export interface AcknowledgeLinks {
  /** A link for a person, or for the program of this name, which counts once it is stored; null when this person may not acknowledge. */
  make(alarm: Alarm, person: Person | null, program: string): { token: string; link: NewLink } | null;
  /** What a link is about, also when it was used; null when it is not known, has expired, or its person may no more. Changes nothing. */
  look(token: string): Promise<SeenLink | null>;
  /** Acknowledges by a link. Problems: `not-found`, `conflict` when it was used or the alarm waits for nobody. */
  use(token: string, rounds: Pick<Rounds, 'act'>): Promise<void>;
}

export function createAcknowledgeLinks({ store, clock }: { store: Store; clock: Clock }): AcknowledgeLinks {
  const look = async (token: string): Promise<SeenLink | null> => {
    const link = await store.acknowledgeLinks.get(hashSecret(token));
    if (link === null || link.expiresMs <= clock.nowMs()) return null;
    const person = link.personId === null ? null : await store.people.get(link.personId);
    if (link.personId !== null && !mayAcknowledge(person)) return null;
    const alarm = await store.alarms.get(link.alarmId);
    if (alarm === null) return null;
    const chambers = await store.chambers.list();
    return { link, alarm, person, chamberName: chambers.find(({ id }) => id === alarm.chamberId)?.name ?? null };
  };
  return {
    look,
    make(alarm, person, program) {
      if (person !== null && !mayAcknowledge(person)) return null;
      const token = randomBytes(32).toString('base64url');
      const madeMs = clock.nowMs();
      const link = {
        ...{ tokenHash: hashSecret(token), alarmId: alarm.id, personId: person?.id ?? null },
        ...{ saidBy: person?.name ?? program, madeMs, expiresMs: madeMs + LIFE_MS },
      };
      return { token, link };
    },
    async use(token, rounds) {
      const seen = await look(token);
      if (seen === null) throw new Problem('not-found', (say) => say.notices.page.unknown);
      const { link, alarm, person } = seen;
      if (link.usedMs !== null) throw new Problem('conflict', (say) => say.notices.page.used);
      if (alarm.level === 0) throw new Problem('conflict', (say) => say.notices.page.over);
      const saidBy = person?.name ?? link.saidBy;
      await rounds.act(alarm.chamberId, {
        ...{ type: 'acknowledge', alarmId: alarm.id, person: saidBy, nowMs: clock.nowMs() },
      });
      // After the act: a crash between leaves a link that finds the alarm taken, never an alarm that nobody can take.
      await store.acknowledgeLinks.use(link.tokenHash, clock.nowMs());
    },
  };
}

function mayAcknowledge(person: Person | null): boolean {
  return person !== null && roles.indexOf(person.role) >= roles.indexOf('crew');
}
