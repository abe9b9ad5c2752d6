// What a change of an alarm tells those who were told of it: somebody has it, or it is over. Nobody else hears of either.
import { ruleOf } from '../alarms/rules/index.ts';
import type { AlarmChange, Effect } from '../alarms/watch-state.ts';
import type { Crew } from './crew.ts';
import { askingOf } from './escalation.ts';
import type { NoticeDraft, Target } from './notice.ts';
import { draftNotice, isOfAsking } from './notice-step.ts';

type AlarmChanged = Extract<Effect, { type: 'alarm-changed' }>;

/** The notices of one change. `told` are those of the alarm so far, in order of time. */
export function changeDue(effect: AlarmChanged, told: readonly NoticeDraft[], crew: Crew): NoticeDraft[] {
  const { alarm, change, atMs } = effect;
  const isTaken = takes.includes(change) && effect.from === 'unacknowledged';
  // What happened at an instant has nothing to return from.
  if (!isTaken && (change !== 'returned' || ruleOf(alarm.rule).isInstant === true)) return [];
  const targets = isTaken ? othersOf(effect, told, crew) : awaiting(told, crew);
  const step = { kind: isTaken ? 'taken' : 'returned', mark: Math.round(atMs).toString(36) } as const;
  return targets.map((target) => draftNotice(alarm, step, target, atMs));
}

/** Who shelves an alarm has taken it too: the others need not go. */
const takes: readonly AlarmChange[] = ['acknowledged', 'shelved'];

function othersOf({ alarm, person }: AlarmChanged, told: readonly NoticeDraft[], crew: Crew): Target[] {
  const { sinceMs } = askingOf(alarm);
  const asked = told.filter((notice) => isOfAsking(notice, sinceMs));
  return reached(asked, crew).filter(({ personId }) => personId === null || nameOf(personId, crew) !== person);
}

/** Those whose last word of the alarm was not that it is over. */
function awaiting(told: readonly NoticeDraft[], crew: Crew): Target[] {
  const own = told.filter(({ kind }) => kind !== 'flood' && kind !== 'outage');
  const last = new Map(own.map((notice) => [notice.personId, notice]));
  return reached(
    [...last.values()].filter(({ kind }) => kind !== 'returned'),
    crew,
  );
}

/** All targets of the people and programs behind these notices, as they can be told now. */
function reached(notices: readonly NoticeDraft[], { people, programs }: Crew): Target[] {
  const ids = new Set(notices.map(({ personId }) => personId));
  const own = people.filter(({ id }) => ids.has(id)).flatMap(({ targets }) => targets);
  return ids.has(null) ? [...own, ...programs] : own;
}

function nameOf(personId: string, { people }: Crew): string | undefined {
  return people.find(({ id }) => id === personId)?.name;
}
