// One message for many alarms: that there are many, where, and that the list says the rest.
import type { NoticeDraft } from '../../shared/telling/notice.ts';
import { SECOND_MS } from '../../shared/units.ts';
import { GIVE_UP_AFTER_MS, isToldLate } from './notice-age.ts';
import type { NoticeMessage, Saying } from './notice-message.ts';

/** What stands at the moment of sending. */
export interface FloodFacts {
  readonly standing: number;
  readonly critical: number;
  /** Names of the chambers that they are in. */
  readonly chambers: readonly string[];
}

export const noFlood: FloodFacts = { standing: 0, critical: 0, chambers: [] };

/** It names no single alarm: `facts` is null, and a tap opens the list. */
export function buildFloodMessage(notice: NoticeDraft, flood: FloodFacts, saying: Saying): NoticeMessage {
  const sentence = `Many alarms at once: ${sayCount(flood)}`;
  const advice =
    'Open the list and begin with the worst. Until it calms down only critical alarms are told one by one.';
  const where = flood.chambers.length === 0 ? '' : `In ${flood.chambers.join(', ')}.\n`;
  return {
    noticeId: notice.id,
    kind: notice.kind,
    title: sentence,
    body: `${where}${advice}`,
    sentence,
    advice,
    url: `${saying.publicUrl}/alarms`,
    tag: 'flood',
    atMs: notice.decidedMs,
    toldLate: isToldLate(notice.decidedMs, saying.nowMs),
    urgent: notice.urgent,
    ttlSeconds: Math.max(60, Math.ceil((notice.decidedMs + GIVE_UP_AFTER_MS - saying.nowMs) / SECOND_MS)),
    ...{ acknowledgeUrl: null, person: saying.person, siteName: saying.siteName },
    facts: null,
  };
}

function sayCount({ standing, critical }: FloodFacts): string {
  const worst = critical === 0 ? '' : `, ${critical} critical`;
  return `${standing} ${standing === 1 ? 'stands' : 'stand'}${worst}`;
}
