// A site on which nobody is real: people with phones, one alarm, and the telling of it driven minute by minute.
import type { Alarm } from '../../../shared/alarms/alarm.ts';
import { type Crew, crewAt, type Roster, type RosterPerson } from '../../../shared/telling/crew.ts';
import type { DutySpan } from '../../../shared/telling/duty.ts';
import { standardEscalation } from '../../../shared/telling/escalation.ts';
import type { NoticeDraft, Target } from '../../../shared/telling/notice.ts';
import { type TellingInput, tellingDue } from '../../../shared/telling/telling-due.ts';
import { MINUTE_MS } from '../../../shared/units.ts';
import { sampleAlarm } from '../../support/notice-samples.ts';

/** Monday, 23:00 in UTC, which is the zone of the site. */
export const ASKS_MS = Date.UTC(2026, 2, 2, 23);
export const hook: Target = { channel: 'webhook', targetId: 'webhook:w1', personId: null };

export function phoneOf(personId: string, number = 1): Target {
  return { channel: 'web-push', targetId: `${personId}-phone-${number}`, personId };
}

export function person(id: string, change: Partial<RosterPerson> = {}): RosterPerson {
  return { id, name: id, role: 'crew', quietFrom: null, quietTo: null, ...change };
}

/** On duty every day, round the clock. */
export function always(personId: string): DutySpan[] {
  return [1, 2, 3, 4, 5, 6, 7].map((weekday) => ({ personId, weekday, from: '00:00', to: '00:00' }));
}

export const nurseryRoster: Roster = {
  people: [person('bo'), person('ann'), person('cy'), person('may', { role: 'manager' })],
  targets: [...['ann', 'bo', 'cy', 'may'].map((id) => phoneOf(id)), hook],
  spans: always('ann'),
  zone: 'UTC',
};

/** An alarm that asks since `ASKS_MS`. */
export function askingAlarm(change: Partial<Alarm> = {}): Alarm {
  return {
    ...sampleAlarm,
    priority: 'critical',
    state: 'unacknowledged',
    occurredMs: ASKS_MS,
    asking: { sinceMs: ASKS_MS, kind: 'raised' },
    ...change,
  };
}

export interface Night {
  /** Everything written so far, in order. */
  readonly notices: readonly NoticeDraft[];
  /** Decides at a time, minutes after the alarm began to ask; answers `kind → person` of what is new, in order. */
  at(minute: number, change?: Partial<TellingInput>): string[];
  siren(minute: number, change?: Partial<TellingInput>): boolean;
  roster: Roster;
  alarms: readonly Alarm[];
}

export function startNight(roster: Roster = nurseryRoster, alarms: readonly Alarm[] = [askingAlarm()]): Night {
  const written = new Map<string, NoticeDraft>();
  const decide = (night: Night, minute: number, change: Partial<TellingInput>) => {
    const nowMs = ASKS_MS + minute * MINUTE_MS;
    return tellingDue(inputAt(night.alarms, [...written.values()], crewAt(night.roster, nowMs), nowMs, change));
  };
  return {
    roster,
    alarms,
    get notices() {
      return [...written.values()];
    },
    at(minute, change = {}) {
      const fresh = decide(this, minute, change).notices.filter(({ id }) => !written.has(id));
      for (const notice of fresh) written.set(notice.id, notice);
      return fresh.map(({ kind, personId, targetId }) => `${kind} → ${personId ?? targetId}`);
    },
    siren(minute, change = {}) {
      return decide(this, minute, change).sirenFor.length > 0;
    },
  };
}

export function inputAt(
  alarms: readonly Alarm[],
  notices: readonly NoticeDraft[],
  crew: Crew,
  nowMs: number,
  change: Partial<TellingInput> = {},
): TellingInput {
  return {
    ...{ alarms, crew, nowMs, changes: [], escalation: standardEscalation },
    toldOf: (id) => notices.filter(({ alarmId }) => alarmId === id),
    isFloodAt: () => false,
    isHeld: false,
    outageToldMs: null,
    ...change,
  };
}
