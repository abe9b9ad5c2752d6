// That a phone of somebody takes no more alerts, told through what else reaches them.
import { sayFinding } from '../../shared/finding.ts';
import type { NoticeDraft } from '../../shared/telling/notice.ts';
import { DAY_MS, SECOND_MS } from '../../shared/units.ts';
import type { LostPhone } from '../store/store.ts';
import { isToldLate } from './notice-age.ts';
import { type NoticeMessage, spokenAt } from './notice-message.ts';
import type { Occasion } from './occasion.ts';

export function buildPhoneLostMessage(notice: NoticeDraft, phone: LostPhone, occasion: Occasion): NoticeMessage {
  const { words } = occasion.saying;
  const say = words.notices.phoneLost;
  const [title, body] = [say.title(phone.name), say.body(upperFirst(sayFinding(phone.reason, words)))];
  return {
    noticeId: notice.id,
    kind: notice.kind,
    ...{ title, body, sentence: title, advice: body },
    url: `${occasion.publicUrl}/my-alerts`,
    tag: notice.alarmId,
    atMs: notice.decidedMs,
    toldLate: isToldLate(notice.decidedMs, occasion.nowMs),
    urgent: notice.urgent,
    acknowledge: null,
    ...spokenAt(occasion),
    ttlSeconds: DAY_MS / SECOND_MS,
    facts: null,
  };
}

function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
