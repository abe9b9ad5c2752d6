// Brings to the deciding of who is told what it decides from: what was told, the crew, floods. It decides and remembers; it stores nothing itself.
import type { Alarm } from '../../shared/alarms/alarm.ts';
import { countsForFlood } from '../../shared/alarms/flood.ts';
import { type Crew, nobodyToTell } from '../../shared/telling/crew.ts';
import { type Escalation, standardEscalation } from '../../shared/telling/escalation.ts';
import type { NoticeDraft } from '../../shared/telling/notice.ts';
import { type AlarmChanged, summaryNotices, tellingDue } from '../../shared/telling/telling-due.ts';
import { SECOND_MS } from '../../shared/units.ts';
import type { Store } from '../store/store.ts';
import { openFloodBook } from './flood-book.ts';
import { createToldBook } from './told-book.ts';

/** Who can be told, and how patiently. */
export interface TellingParts {
  crewAt(nowMs: number): Crew;
  escalation(): Escalation;
}

/** Nobody is told anything, as in a replay. */
export const silentTelling: TellingParts = { crewAt: () => nobodyToTell, escalation: () => standardEscalation };

/** What one turn has come to. */
export interface Turned {
  readonly changes: readonly AlarmChanged[];
  /** Every alarm that is not back to normal after it. */
  readonly alarms: readonly Alarm[];
  /** null = nothing was judged. */
  readonly nowMs: number | null;
  /** All but critical heat waits for one message about all of it. */
  readonly isHeld: boolean;
}

export interface Told {
  readonly notices: readonly NoticeDraft[];
  /** Makes it true in memory, once it is stored. */
  apply(): void;
}

export interface Teller {
  decide(turned: Turned): Told;
  /** Alarms that the siren sounds for, as decided last. */
  sirenFor(): readonly Alarm[];
}

/** Between changes it is enough to look this often: steps are minutes apart. */
const LOOK_EVERY_MS = SECOND_MS;

/** Loads what was told by the time the service stopped. */
export async function openTeller(store: Store, parts: TellingParts): Promise<Teller> {
  const told = await createToldBook(store);
  const flood = await openFloodBook(store);
  let sirenFor: readonly Alarm[] = [];
  let lookedMs = -Infinity;
  return {
    decide(turned) {
      const { changes, alarms, nowMs, isHeld } = turned;
      if (nowMs === null) return nothingToTell;
      const isEarly = nowMs >= lookedMs && nowMs - lookedMs < LOOK_EVERY_MS;
      if (changes.length === 0 && isEarly) return nothingToTell;
      const counted = changes.filter(countsForFlood);
      const step = flood.step(counted.map(({ atMs }) => atMs));
      const crew = parts.crewAt(nowMs);
      const back = changes.find(({ change, alarm }) => change === 'occurred' && alarm.rule === 'restarted')?.alarm;
      const due = tellingDue({
        ...{ alarms, changes, crew, nowMs, isHeld },
        toldOf: told.of,
        escalation: parts.escalation(),
        isFloodAt: step.isFloodAt,
        outageToldMs: back === undefined ? told.outageToldMs() : nowMs,
      });
      const last = step.begins ? counted.at(-1)?.alarm : undefined;
      const notices = [
        ...due.notices,
        ...(last === undefined ? [] : summaryNotices('flood', last, crew, nowMs)),
        ...(back === undefined ? [] : summaryNotices('outage', back, crew, nowMs)),
      ];
      return {
        notices,
        apply() {
          told.add(notices);
          step.keep();
          for (const { alarm } of changes) if (alarm.state === 'normal') told.forget(alarm.id);
          sirenFor = due.sirenFor;
          lookedMs = nowMs;
        },
      };
    },
    sirenFor: () => sirenFor,
  };
}

const nothingToTell: Told = { notices: [], apply: () => undefined };
