// One notice as a message that every channel can take: built from the notice and from what is known of its alarm at the moment of sending,
// so that a message that was held up never tells an old state as the present one.
import type { Alarm } from '../../shared/alarms/alarm.ts';
import { adviseOnAlarm, sayAlarm } from '../../shared/alarms/say-alarm.ts';
import { plainEnglish } from '../../shared/saying.ts';
import type { NoticeDraft, NoticeKind } from '../../shared/telling/notice.ts';
import { SECOND_MS } from '../../shared/units.ts';
import { buildFloodMessage, type FloodFacts, noFlood } from './flood-message.ts';
import { GIVE_UP_AFTER_MS, isToldLate } from './notice-age.ts';
import { sayBody, sayTitle } from './say-notice.ts';

/** What the store knows of an alarm when its notice is sent. */
export interface NoticeFacts {
  readonly alarm: Alarm;
  readonly chamber: { readonly id: string; readonly name: string };
  readonly batch: { readonly id: string; readonly code: string } | null;
  /** Name of the probe that the alarm is about; null when it is about none. */
  readonly probeName: string | null;
  /** For a notice of a flood: what stands at the moment of sending. */
  readonly flood?: FloodFacts;
}

/** Of a person, what a message may say of them. */
export interface Hearer {
  readonly name: string;
  readonly email: string | null;
  readonly phoneNumber: string | null;
}

/** Where, when and to whom it is said. */
export interface Saying {
  readonly nowMs: number;
  /** The site's IANA time zone. */
  readonly zone: string;
  /** Without a slash at the end. */
  readonly publicUrl: string;
  readonly siteName: string;
  readonly person: Hearer | null;
}

export interface NoticeMessage {
  readonly noticeId: string;
  readonly kind: NoticeKind | 'test';
  readonly title: string;
  readonly body: string;
  /** The alarm as one sentence, and what to do first. */
  readonly sentence: string;
  readonly advice: string;
  /** Page to open. */
  readonly url: string;
  /** The alarm: a later message of the same tag replaces an earlier one on the phone. */
  readonly tag: string;
  /** When it was decided. */
  readonly atMs: number;
  readonly toldLate: boolean;
  readonly urgent: boolean;
  /** Leads to a page with one button that acknowledges; null where there is nothing to acknowledge or nobody who may. */
  readonly acknowledgeUrl: string | null;
  /** Who is told; null = a program. */
  readonly person: Hearer | null;
  readonly siteName: string;
  /** How long it is still worth showing. */
  readonly ttlSeconds: number;
  /** null for a test. */
  readonly facts: NoticeFacts | null;
}

/** The message of a notice as it is to be told at `nowMs`. */
export function buildNoticeMessage(notice: NoticeDraft, facts: NoticeFacts, saying: Saying): NoticeMessage {
  const { alarm, chamber } = facts;
  if (notice.kind === 'flood') return buildFloodMessage(notice, facts.flood ?? noFlood, saying);
  const lifeMs = Math.min(GIVE_UP_AFTER_MS, notice.decidedMs + GIVE_UP_AFTER_MS - saying.nowMs);
  return {
    noticeId: notice.id,
    kind: notice.kind,
    title: sayTitle(facts, saying),
    body: sayBody(notice, facts, saying),
    sentence: sayAlarm(alarm, saying.nowMs, plainEnglish),
    advice: adviseOnAlarm(alarm, plainEnglish),
    url: `${saying.publicUrl}/chambers/${encodeURIComponent(chamber.id)}?alarm=${encodeURIComponent(alarm.id)}`,
    tag: alarm.id,
    atMs: notice.decidedMs,
    toldLate: isToldLate(notice.decidedMs, saying.nowMs),
    urgent: notice.urgent,
    ttlSeconds: Math.max(60, Math.ceil(lifeMs / SECOND_MS)),
    ...{ acknowledgeUrl: null, person: saying.person, siteName: saying.siteName },
    facts,
  };
}

const TEST_TTL_SECONDS = 300;

/** A message that says it is only a test. Two tests differ by their moment. */
export function buildTestMessage(saying: Saying): NoticeMessage {
  return {
    noticeId: `test.${saying.nowMs.toString(36)}`,
    kind: 'test',
    title: 'Test from Takewell',
    body: 'Alerts reach this phone. Nothing is wrong.',
    sentence: 'This is a test.',
    advice: 'Nothing to do.',
    url: `${saying.publicUrl}/`,
    tag: 'test',
    atMs: saying.nowMs,
    toldLate: false,
    urgent: true,
    ...{ acknowledgeUrl: null, person: saying.person, siteName: saying.siteName },
    ttlSeconds: TEST_TTL_SECONDS,
    facts: null,
  };
}
