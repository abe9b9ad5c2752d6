// One heat alarm and its notice, to be varied by the tests of alerting.
import type { NoticeFacts } from '../../server/notify/notice-message.ts';
import type { Occasion } from '../../server/notify/occasion.ts';
import type { Alarm } from '../../shared/alarms/alarm.ts';
import { plainEnglish } from '../../shared/plain-english.ts';
import type { NoticeDraft } from '../../shared/telling/notice.ts';

/** A Sunday, 13:04 in the zone of the samples. */
export const SAMPLE_MS = Date.UTC(2026, 2, 1, 12, 4);
const MINUTE_MS = 60_000;

/** Hot since 13:00, told at 13:04. */
export const sampleAlarm: Alarm = {
  id: 'c2.heat.mm7',
  chamberId: 'c2',
  batchId: null,
  rule: 'heat',
  probeId: null,
  state: 'unacknowledged',
  level: 1,
  priority: 'high',
  sinceMs: SAMPLE_MS - 4 * MINUTE_MS,
  occurredMs: SAMPLE_MS,
  limit: 28,
  value: 29.1,
  peak: 29.4,
  peakMs: SAMPLE_MS,
  acknowledgedMs: null,
  acknowledgedBy: null,
  returnedMs: null,
  shelvedUntilMs: null,
  shelvedReason: null,
};

export const sampleNotice: NoticeDraft = {
  id: 'c2.heat.mm7.raised.mm7.phone-1',
  alarmId: sampleAlarm.id,
  chamberId: 'c2',
  kind: 'raised',
  channel: 'web-push',
  targetId: 'phone-1',
  personId: 'crew-1',
  decidedMs: SAMPLE_MS,
  urgent: true,
};

export const sampleFacts: NoticeFacts = {
  alarm: sampleAlarm,
  chamber: { id: 'c2', name: 'Chamber 2' },
  batch: { id: 'b1', code: 'T-117' },
  probeName: null,
  told: [],
  alsoHere: [],
  trend: null,
};

export const sampleOccasion: Occasion = {
  nowMs: SAMPLE_MS,
  zone: 'Europe/Berlin',
  publicUrl: 'https://takewell.example',
  siteName: 'Test nursery',
  person: null,
  saying: plainEnglish,
};
