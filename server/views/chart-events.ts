// The marks on a chart of a batch: stages, holds, checks, log entries, alarms.

import type { Alarm } from '../../shared/alarms/alarm.ts';
import { nameRule } from '../../shared/alarms/say-alarm.ts';
import type { ChartEvent } from '../../shared/api/chambers.ts';
import { plainNote } from '../../shared/healing/batch-log.ts';
import { checkStatus } from '../../shared/healing/checks.ts';
import { plainEnglish } from '../../shared/plain-english.ts';
import { utcText } from '../../shared/units.ts';
import type { AlarmEvent, LogRow, Store } from '../store/store.ts';
import type { BatchPlan, HealingNow } from '../watch/watched-chamber.ts';
import { timeText } from './alarm-view.ts';
import { viewLogEntry } from './log-view.ts';

/** In order of time. Alarms span from the beginning of the condition to its end, or are open (`until` null). */
export async function chartEvents(
  store: Store,
  healing: HealingNow,
  plan: BatchPlan,
  nowMs: number,
): Promise<ChartEvent[]> {
  const { batch } = healing;
  const [log, alarms] = [await store.batches.log(batch.id), await store.alarms.ofBatch(batch.id)];
  const events: ChartEvent[] = [
    ...plan.spans.map(({ stage, startMs, endMs }) => mark('stage', stage, stage, startMs, endMs)),
    ...batch.holds.map(({ fromMs, toMs }) => mark('hold', 'hold', 'on hold', fromMs, toMs)),
    ...checkMarks(healing, plan, nowMs),
    ...log.filter(({ kind }) => kind !== 'check').map((row) => logMark(row, healing)),
    ...(await Promise.all(alarms.map(async (alarm) => alarmMarks(alarm, await store.alarms.events(alarm.id))))).flat(),
  ];
  return events.sort((a, b) => a.at.localeCompare(b.at));
}

function checkMarks({ answers }: HealingNow, plan: BatchPlan, nowMs: number): ChartEvent[] {
  return plan.checks.map((check) => {
    const answer = answers.find(({ checkId }) => checkId === check.checkId) ?? null;
    const what = answer?.answer ?? checkStatus(check, null, nowMs);
    return mark('check', what, check.question, check.dueMs, answer?.atMs ?? null);
  });
}

function logMark(row: LogRow, { document }: HealingNow): ChartEvent {
  const label = plainNote(row, document) || row.kind;
  return { ...mark('log', row.kind, label, row.atMs, row.atMs), entry: viewLogEntry(row, document) };
}

/** A mark for each time the condition stood: an alarm that came again before it was acknowledged has several. */
function alarmMarks(alarm: Alarm, steps: readonly AlarmEvent[]): ChartEvent[] {
  const starts = steps.filter(({ change }) => change === 'occurred' || change === 'occurred-again');
  const ends = steps.filter(isEnd);
  return starts.map((start, index) => {
    // The beginning before the on-delay is known of the last time only.
    const sinceMs = index === starts.length - 1 ? alarm.sinceMs : start.atMs;
    return mark('alarm', alarm.rule, nameRule(alarm.rule, plainEnglish), sinceMs, ends[index]?.atMs ?? null);
  });
}

/** The condition is over, or the alarm has made way for good to one that says more. */
function isEnd({ change, toState }: AlarmEvent): boolean {
  return change === 'returned' || (change === 'suppressed' && toState === 'normal');
}

function mark(kind: ChartEvent['kind'], what: string, label: string, atMs: number, untilMs: number | null): ChartEvent {
  return { at: utcText(atMs), until: timeText(untilMs), kind, what, label };
}
