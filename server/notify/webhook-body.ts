// The body of a webhook call without a template: the alarm in the words of the HTTP interface, what a person would be told, and where to look.
import type { AlarmView } from '../../shared/api/alarms.ts';
import { utcText } from '../../shared/units.ts';
import type { NoticeFacts, NoticeMessage } from './notice-message.ts';

/** One JSON object; times are RFC 3339 UTC. `alarm`, `chamber` and `batch` are null for a test. */
export function writeWebhookBody(message: NoticeMessage): string {
  const { noticeId, kind, title, body, sentence, advice, url, acknowledge, person, atMs, toldLate, facts } = message;
  return JSON.stringify({
    noticeId,
    kind,
    at: utcText(atMs),
    toldLate,
    title,
    body,
    sentence,
    advice,
    url,
    acknowledgeUrl: acknowledge?.url ?? null,
    person,
    chamber: facts?.chamber ?? null,
    batch: facts?.batch ?? null,
    alarm: facts === null ? null : viewOf(facts),
  });
}

function viewOf({
  alarm,
  chamber,
  batch,
  probeName,
}: NoticeFacts): Omit<AlarmView, 'sentence' | 'advice' | 'about' | 'expected' | 'service'> {
  const { id, rule, probeId, state, level, priority, limit, value, peak, acknowledgedBy, shelvedReason } = alarm;
  return {
    id,
    chamberId: chamber.id,
    chamberName: chamber.name ?? '',
    batchId: alarm.batchId,
    batchCode: batch?.code ?? null,
    rule,
    probeId,
    probeName,
    state,
    level,
    priority,
    since: utcText(alarm.sinceMs),
    occurredAt: utcText(alarm.occurredMs),
    limit,
    value,
    peak,
    peakAt: textOf(alarm.peakMs),
    acknowledgedAt: textOf(alarm.acknowledgedMs),
    acknowledgedBy,
    returnedAt: textOf(alarm.returnedMs),
    shelvedUntil: textOf(alarm.shelvedUntilMs),
    shelvedReason,
  };
}

function textOf(ms: number | null): string | null {
  return ms === null ? null : utcText(ms);
}
