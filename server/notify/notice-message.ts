// One notice as a message that every channel can take: built from the notice and from what is known of its alarm at the moment of sending,
// so that a message that was held up never tells an old state as the present one.
import type { Alarm } from '../../shared/alarms/alarm.ts';
import { adviseOnAlarm, sayAlarm } from '../../shared/alarms/say-alarm.ts';
import type { NoticeDraft, NoticeKind } from '../../shared/telling/notice.ts';
import { SECOND_MS } from '../../shared/units.ts';
import type { SharedWords } from '../../shared/words/shared-words.ts';
import { buildFloodMessage, type FloodFacts, noFlood } from './flood-message.ts';
import type { Trend } from './gather-trend.ts';
import { isToldLate, NEWS_MS } from './notice-age.ts';
import type { Hearer, Occasion } from './occasion.ts';
import { sayBody, sayTitle } from './say-notice.ts';

/** What the store knows of an alarm when its notice is sent. */
export interface NoticeFacts {
  readonly alarm: Alarm;
  /** `name` null = it was removed. */
  readonly chamber: { readonly id: string; readonly name: string | null };
  readonly batch: { readonly id: string; readonly code: string } | null;
  /** Name of the probe that the alarm is about; null when it is about none. */
  readonly probeName: string | null;
  /** Names of the others who are told of it while it waits for somebody. */
  readonly told: readonly string[];
  /** What else stands in the chamber and waits for somebody, the worst first: this message may be the only one of it for a while. */
  readonly alsoHere: readonly Alarm[];
  readonly trend: Trend | null;
  /** For a notice of a flood: what stands at the moment of sending. */
  readonly flood?: FloodFacts;
}

export interface NoticeMessage {
  readonly noticeId: string;
  readonly kind: NoticeKind | 'test' | 'history';
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
  /** Acknowledges once, without signing in; null where there is nothing to acknowledge or nobody who may. */
  readonly acknowledge: { readonly token: string; readonly url: string } | null;
  /** Who is told; null = a program. */
  readonly person: Hearer | null;
  readonly siteName: string;
  /** The words it is written in, for what a channel puts around it. */
  readonly words: SharedWords;
  /** How long it is still worth showing. */
  readonly ttlSeconds: number;
  /** null for what is about no single alarm. */
  readonly facts: NoticeFacts | null;
}

/** What every message takes from its occasion. */
export function spokenAt({ person, siteName, saying }: Occasion): Pick<NoticeMessage, 'person' | 'siteName' | 'words'> {
  return { person, siteName, words: saying.words };
}

/** The message of a notice as it is to be told now. `token` is the secret of its link, null for none. */
export function buildNoticeMessage(
  notice: NoticeDraft,
  facts: NoticeFacts,
  occasion: Occasion,
  token: string | null = null,
): NoticeMessage {
  if (notice.kind === 'flood') return buildFloodMessage(notice, facts.flood ?? noFlood, occasion);
  const { alarm, chamber } = facts;
  const { nowMs, publicUrl, saying } = occasion;
  const lifeMs = Math.min(NEWS_MS, notice.decidedMs + NEWS_MS - nowMs);
  return {
    noticeId: notice.id,
    kind: notice.kind,
    title: sayTitle(notice.kind, facts, occasion),
    body: sayBody(notice, facts, occasion),
    sentence: sayAlarm(alarm, nowMs, saying),
    advice: adviseOnAlarm(alarm, saying),
    url: `${publicUrl}/chambers/${encodeURIComponent(chamber.id)}?alarm=${encodeURIComponent(alarm.id)}`,
    tag: alarm.id,
    atMs: notice.decidedMs,
    toldLate: isToldLate(notice.decidedMs, nowMs),
    urgent: notice.urgent,
    ttlSeconds: Math.max(60, Math.ceil(lifeMs / SECOND_MS)),
    acknowledge: token === null ? null : { token, url: `${publicUrl}/acknowledge/${token}` },
    ...spokenAt(occasion),
    facts,
  };
}

const TEST_TTL_SECONDS = 300;

/** A message that says it is only a test. Two tests differ by their moment and their target. */
export function buildTestMessage(occasion: Occasion, targetId: string): NoticeMessage {
  const { test } = occasion.saying.words.notices;
  return {
    noticeId: `test.${occasion.nowMs.toString(36)}.${targetId}`,
    kind: 'test',
    ...test,
    url: `${occasion.publicUrl}/my-alerts`,
    tag: 'test',
    atMs: occasion.nowMs,
    toldLate: false,
    urgent: true,
    acknowledge: null,
    ...spokenAt(occasion),
    ttlSeconds: TEST_TTL_SECONDS,
    facts: null,
  };
}
