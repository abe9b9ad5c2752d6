// What is to be told about one alarm to one target, in order. A phone needs only the last of it; a program gets each, in order.
import type { NoticeKind } from '../../shared/alarms/notice-due.ts';
import type { Notice } from '../store/store.ts';

export interface AlarmThread {
  readonly key: string;
  readonly alarmId: string;
  readonly channel: Notice['channel'];
  readonly targetId: string;
  /** Those of it that are due. */
  readonly due: readonly Notice[];
}

/** Due notices by alarm and target, the urgent first, then the longest waiting. */
export function threadsOf(due: readonly Notice[]): AlarmThread[] {
  const threads = new Map<string, AlarmThread>();
  for (const notice of due) {
    const { alarmId, channel, targetId } = notice;
    const key = threadKey(notice);
    threads.set(key, { key, alarmId, channel, targetId, due: [...(threads.get(key)?.due ?? []), notice] });
  }
  return [...threads.values()].sort((a, b) => Number(isUrgent(b)) - Number(isUrgent(a)) || firstMs(a) - firstMs(b));
}

export function threadKey({ alarmId, channel, targetId }: Pick<Notice, 'alarmId' | 'channel' | 'targetId'>): string {
  return JSON.stringify([alarmId, channel, targetId]);
}

const courseOf: Record<NoticeKind, number> = { flood: 0, raised: 1, escalated: 2, returned: 3 };

/** The notices of one thread that still wait, in the order in which they were decided. */
export function waitingInOrder(ofAlarm: readonly Notice[], thread: AlarmThread): Notice[] {
  return ofAlarm
    .filter((one) => one.state === 'waiting' && threadKey(one) === thread.key)
    .sort((a, b) => a.decidedMs - b.decidedMs || courseOf[a.kind] - courseOf[b.kind]);
}

/** True for a notice that is not worth telling because a later one of the same alarm tells the whole: on a phone the last one must stand. */
export function isReplaced(waiting: readonly Notice[], index: number): boolean {
  // A flood is news of its own: it neither tells its alarm nor is told by it.
  if (waiting[index]?.kind === 'flood') return false;
  return waiting[index]?.channel === 'web-push' && waiting.slice(index + 1).some(({ kind }) => kind !== 'flood');
}

function isUrgent({ due }: AlarmThread): boolean {
  return due.some((one) => one.urgent);
}

function firstMs({ due }: AlarmThread): number {
  return Math.min(...due.map((one) => one.decidedMs));
}
