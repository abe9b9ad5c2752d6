// What a notice is, in its id: alarm, kind, asking, step and target. Deciding the same twice makes the same id, which is stored once.
import type { Alarm } from '../alarms/alarm.ts';
import type { NoticeDraft, NoticeKind, Target } from './notice.ts';

/** One thing said about one alarm. `mark` tells it from the same said at another time: since when the alarm asks, when it was taken, … */
export interface NoticeStep {
  readonly kind: NoticeKind;
  readonly mark: string;
}

/** A step of an asking that began at an instant; `detail` tells steps of one kind apart. */
export function askingStep(kind: NoticeKind, sinceMs: number, detail = ''): NoticeStep {
  return { kind, mark: detail === '' ? markOf(sinceMs) : `${markOf(sinceMs)}-${detail}` };
}

const askingKinds: readonly NoticeKind[] = ['raised', 'escalated', 'asked-anew', 'passed-on', 'repeated'];

/** True for a notice that asks somebody to take the alarm. */
export function isAskingNotice({ kind }: Pick<NoticeDraft, 'kind'>): boolean {
  return askingKinds.includes(kind);
}

/** True for a notice that was written for the asking that began at `sinceMs`. */
export function isOfAsking(notice: NoticeDraft, sinceMs: number): boolean {
  const [mark] = stepOf(notice).split('-');
  return isAskingNotice(notice) && mark === markOf(sinceMs);
}

/** The notice of a step to one target. */
export function draftNotice(alarm: Alarm, { kind, mark }: NoticeStep, target: Target, nowMs: number): NoticeDraft {
  return {
    id: `${alarm.id}.${kind}.${mark}.${target.targetId}`,
    alarmId: alarm.id,
    chamberId: alarm.chamberId,
    kind,
    channel: target.channel,
    targetId: target.targetId,
    personId: target.personId,
    decidedMs: nowMs,
    urgent: alarm.priority === 'critical' || alarm.priority === 'high',
  };
}

function stepOf({ id, alarmId, kind, targetId }: NoticeDraft): string {
  return id.slice(`${alarmId}.${kind}.`.length, id.length - `.${targetId}`.length);
}

function markOf(ms: number): string {
  return Math.round(ms).toString(36);
}
