// Should someone be told of this change, and who? The pure half of alerting: it decides and says why; delivering is the server's.
import type { NoticeDraft, NoticeKind, Target } from '../telling/notice.ts';
import type { Alarm, Priority } from './alarm.ts';
import type { AlarmChange, Effect } from './watch-state.ts';

export type NoticeDecision = { readonly notices: readonly NoticeDraft[]; readonly reason: string };

type AlarmChanged = Extract<Effect, { type: 'alarm-changed' }>;

const kinds: Partial<Record<AlarmChange, NoticeKind>> = {
  occurred: 'raised',
  'occurred-again': 'raised',
  unshelved: 'raised',
  unsuppressed: 'raised',
  'returned-to-service': 'raised',
  escalated: 'escalated',
  returned: 'returned',
};

/** Priorities that reach a phone; `low` waits on the screen until somebody looks. */
const told: readonly Priority[] = ['critical', 'high', 'medium'];

/**
 * The notices due for a change of an alarm. `targets` are all places that may be told now; `toldBefore` those already told of this
 * alarm: a return is told to them only. During a flood only critical alarms are told one by one.
 */
export function noticesDue(
  effect: AlarmChanged,
  targets: readonly Target[],
  toldBefore: ReadonlySet<string>,
  isFlood = false,
): NoticeDecision {
  const kind = kinds[effect.change];
  const { alarm } = effect;
  if (kind === undefined) return none(`a change "${effect.change}" is not told`);
  if (!told.includes(alarm.priority)) return none(`priority ${alarm.priority} waits on the screen`);
  if (kind !== 'returned' && alarm.state !== 'unacknowledged') return none(`the alarm is ${alarm.state}`);
  if (isFlood && kind !== 'returned' && alarm.priority !== 'critical') return none('a flood is told in one notice');
  const reached = kind === 'returned' ? targets.filter((one) => toldBefore.has(one.targetId)) : targets;
  if (reached.length === 0)
    return none(kind === 'returned' ? 'nobody was told of it' : 'no phone, no e-mail and no webhook is set up');
  return {
    notices: reached.map((target) => draft(alarm, kind, target, effect.atMs)),
    reason: `${kind}, ${alarm.priority}`,
  };
}

/** True for a change that counts towards a flood: a new alarm that would be told. */
export function countsForFlood({ change, alarm }: Pick<AlarmChanged, 'change' | 'alarm'>): boolean {
  return change === 'occurred' && told.includes(alarm.priority);
}

/** The one notice for each target that stands for those of a flood, at its beginning. */
export function floodNotices(alarm: Alarm, targets: readonly Target[], atMs: number): NoticeDraft[] {
  return targets.map((target) => ({ ...draft(alarm, 'flood', target, atMs), urgent: true }));
}

function draft(alarm: Alarm, kind: NoticeKind, target: Target, atMs: number): NoticeDraft {
  return {
    id: `${alarm.id}.${kind}.${atMs.toString(36)}.${target.targetId}`,
    alarmId: alarm.id,
    chamberId: alarm.chamberId,
    kind,
    channel: target.channel,
    targetId: target.targetId,
    personId: target.personId,
    decidedMs: atMs,
    urgent: alarm.priority === 'critical' || alarm.priority === 'high',
  };
}

function none(reason: string): NoticeDecision {
  return { notices: [], reason };
}
