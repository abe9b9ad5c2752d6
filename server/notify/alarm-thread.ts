// What is to be told about one alarm to one target, in order. A phone needs only the last of it; a program gets each, in order.
import { noticeKinds } from '../../shared/telling/notice.ts';
import type { Notice } from '../store/store.ts';
import { isHistory } from './notice-age.ts';

export interface AlarmThread {
  readonly key: string;
  /** null = what could not be told for six hours, of all alarms of the target. */
  readonly alarmId: string | null;
  readonly channel: Notice['channel'];
  readonly targetId: string;
  /** Those of it that are due. */
  readonly due: readonly Notice[];
}

/** Due notices by alarm and target, the urgent first, then the longest waiting; those that are history by target alone. */
export function threadsOf(due: readonly Notice[], nowMs: number): AlarmThread[] {
  const threads = new Map<string, AlarmThread>();
  for (const notice of due) {
    const { channel, targetId } = notice;
    const alarmId = isHistory(notice.decidedMs, nowMs) ? null : notice.alarmId;
    const key = threadKey({ alarmId, channel, targetId });
    threads.set(key, { key, alarmId, channel, targetId, due: [...(threads.get(key)?.due ?? []), notice] });
  }
  return [...threads.values()].sort((a, b) => Number(isUrgent(b)) - Number(isUrgent(a)) || firstMs(a) - firstMs(b));
}

export function threadKey({
  alarmId,
  channel,
  targetId,
}: Pick<AlarmThread, 'alarmId' | 'channel' | 'targetId'>): string {
  return JSON.stringify([alarmId, channel, targetId]);
}

/** The notices of one thread that still wait, in the order in which they were decided. */
export function waitingInOrder(ofAlarm: readonly Notice[], thread: AlarmThread): Notice[] {
  return ofAlarm
    .filter((one) => one.state === 'waiting' && threadKey(one) === thread.key)
    .sort((a, b) => a.decidedMs - b.decidedMs || noticeKinds.indexOf(a.kind) - noticeKinds.indexOf(b.kind));
}

/** True for a notice that is not worth telling because a later one of the same alarm tells the whole: a person must see the last one. */
export function isReplaced(waiting: readonly Notice[], index: number): boolean {
  const one = waiting[index];
  if (one === undefined || isNewsOfItsOwn(one)) return false;
  return one.personId !== null && waiting.slice(index + 1).some((later) => !isNewsOfItsOwn(later));
}

/** It neither tells its alarm nor is told by it. */
function isNewsOfItsOwn({ kind }: Notice): boolean {
  return kind === 'flood' || kind === 'outage';
}

function isUrgent({ due }: AlarmThread): boolean {
  return due.some((one) => one.urgent);
}

function firstMs({ due }: AlarmThread): number {
  return Math.min(...due.map((one) => one.decidedMs));
}
