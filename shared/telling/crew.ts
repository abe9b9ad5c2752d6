// Everybody who can be told, as they are at one instant: on duty or not, in quiet hours or not, and through what.
import type { Role } from '../api/session.ts';
import { type DutySpan, onDutyAt } from './duty.ts';
import type { Target } from './notice.ts';
import { isQuiet, type QuietHours } from './quiet-hours.ts';

export interface RosterPerson extends QuietHours {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
}

/** What stands in the store; `people` in the order in which they are asked when nobody on duty takes an alarm. */
export interface Roster {
  readonly people: readonly RosterPerson[];
  readonly targets: readonly Target[];
  readonly spans: readonly DutySpan[];
  /** IANA zone of the site. */
  readonly zone: string;
}

export interface CrewMember {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  /** Never empty. */
  readonly targets: readonly Target[];
  readonly isOnDuty: boolean;
  readonly isQuiet: boolean;
}

export interface Crew {
  /** Only those who can be told. */
  readonly people: readonly CrewMember[];
  readonly programs: readonly Target[];
}

/** Nobody, as in a replay. */
export const nobodyToTell: Crew = { people: [], programs: [] };

/**
 * The crew at an instant. Where nobody on duty can be told (no rota, a gap in it, or nobody of them has a channel) everybody counts as on
 * duty: an alarm that rings too widely is better than one that rings nowhere.
 */
export function crewAt({ people, targets, spans, zone }: Roster, nowMs: number): Crew {
  const onDuty = new Set(onDutyAt(spans, zone, nowMs));
  const own = Map.groupBy(targets, ({ personId }) => personId);
  const isReached = ({ id }: RosterPerson) => own.has(id);
  const isCovered = people.some((person) => isReached(person) && onDuty.has(person.id));
  return {
    people: people.filter(isReached).map(({ id, name, role, ...quiet }) => ({
      ...{ id, name, role },
      targets: own.get(id) ?? [],
      isOnDuty: !isCovered || onDuty.has(id),
      isQuiet: isQuiet(quiet, zone, nowMs),
    })),
    programs: own.get(null) ?? [],
  };
}
