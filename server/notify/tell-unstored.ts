// Tells a notice that is in no outbox, because nothing can be stored: once, from memory.
import { type Alarm, SERVICE_NAME } from '../../shared/alarms/alarm.ts';
import { sayFinding } from '../../shared/finding.ts';
import { plainEnglish } from '../../shared/plain-english.ts';
import type { NoticeDraft } from '../../shared/telling/notice.ts';
import { occasionFor } from './compose-message.ts';
import type { DeliveryParts } from './delivery-parts.ts';
import { findTarget } from './find-target.ts';
import { buildNoticeMessage, type NoticeFacts } from './notice-message.ts';

/** The result when it was taken over, else null. Never rejects. */
export async function tellUnstored(draft: NoticeDraft, alarm: Alarm, parts: DeliveryParts): Promise<string | null> {
  try {
    const notice = { ...draft, attempts: 0, state: 'waiting', result: null, resultMs: null } as const;
    const target = await findTarget(notice, parts);
    if ('missing' in target) return null;
    const place = { chamber: { id: alarm.chamberId, name: SERVICE_NAME }, batch: null, probeName: null };
    const facts: NoticeFacts = { alarm, ...place, told: [], alsoHere: [], trend: null };
    const message = buildNoticeMessage(notice, facts, occasionFor(target, parts));
    const result = await target.send(message, new AbortController().signal);
    const said = sayFinding(result.delivered ? result.detail : result.reason, plainEnglish.words);
    if (result.delivered) return said;
    parts.log.warn({ notice: draft.id, result: said }, 'an unstored notice was not delivered');
  } catch (err) {
    parts.log.error({ err, notice: draft.id }, 'an unstored notice could not be told');
  }
  return null;
}
