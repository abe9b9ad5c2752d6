// Puts a message together at the moment of sending: what the store knows of its alarm, who hears it and how, and the link that takes it.
import type { NewLink, Notice } from '../store/store.ts';
import type { DeliveryParts } from './delivery-parts.ts';
import type { FoundTarget } from './find-target.ts';
import { gatherFacts } from './gather-facts.ts';
import { buildHistoryMessage } from './history-message.ts';
import { buildNoticeMessage, type NoticeFacts, type NoticeMessage } from './notice-message.ts';
import { makeOccasion, type Occasion } from './occasion.ts';
import { buildPhoneLostMessage } from './phone-lost-message.ts';

export interface Composed {
  readonly message: NoticeMessage;
  /** Counts once it is stored. */
  readonly link: NewLink | null;
}

type Found = Pick<FoundTarget, 'person' | 'program'>;

/** null when the store knows nothing of what it is about. */
export async function composeMessage(notice: Notice, target: Found, parts: DeliveryParts): Promise<Composed | null> {
  const occasion = occasionFor(target, parts);
  if (notice.kind === 'phone-lost') return composePhoneLost(notice, occasion, parts);
  const facts = await gatherFacts(notice, parts.store, occasion.nowMs);
  if (facts === null) return null;
  const asksForSomebody = facts.alarm.state === 'unacknowledged' && notice.kind !== 'flood';
  const made = asksForSomebody ? parts.makeLink(facts.alarm, target.person, target.program) : null;
  return { message: buildNoticeMessage(notice, facts, occasion, made?.token ?? null), link: made?.link ?? null };
}

/** One message for all of them; null when the store knows none of their alarms. */
export async function composeHistory(
  notices: readonly Notice[],
  target: Found,
  parts: DeliveryParts,
): Promise<Composed | null> {
  const occasion = occasionFor(target, parts);
  const inOrder = notices.toSorted((a, b) => a.decidedMs - b.decidedMs);
  const byAlarm = new Map(inOrder.map((notice) => [notice.alarmId, notice]));
  const facts: NoticeFacts[] = [];
  for (const notice of byAlarm.values()) {
    const known = await gatherFacts(notice, parts.store, occasion.nowMs);
    if (known !== null) facts.push(known);
  }
  if (facts.length === 0) return null;
  return { message: buildHistoryMessage(notices, facts, occasion), link: null };
}

async function composePhoneLost(
  notice: Notice,
  occasion: Occasion,
  { store }: DeliveryParts,
): Promise<Composed | null> {
  const lost = notice.personId === null ? [] : await store.phones.lost(notice.personId);
  const phone = lost.find(({ id }) => notice.alarmId === `phone.${id}`);
  return phone === undefined ? null : { message: buildPhoneLostMessage(notice, phone, occasion), link: null };
}

export function occasionFor({ person }: Found, { clock, publicUrl, manner }: DeliveryParts): Occasion {
  return makeOccasion(clock.nowMs(), publicUrl(), manner(), person);
}
