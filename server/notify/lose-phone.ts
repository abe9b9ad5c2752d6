// A phone is dropped when it takes no more: because its subscription has ended, or because pushes to it were refused again and again. Its person is
// told through what else reaches them.
import { type Finding, sayFinding } from '../../shared/finding.ts';
import { plainEnglish } from '../../shared/plain-english.ts';
import type { NoticeDraft } from '../../shared/telling/notice.ts';
import { HOUR_MS } from '../../shared/units.ts';
import type { Phone } from '../store/store.ts';
import type { NotDelivered } from './channels/channel.ts';
import type { DeliveryParts } from './delivery-parts.ts';

type Parts = Pick<DeliveryParts, 'store' | 'clock' | 'log' | 'onPhoneGone' | 'targetsOf'>;

const REFUSALS_TO_DROP = 4;
/** A refused signature may come of a clock that is wrong: all phones would be dropped within a minute of it. */
const SIGNATURE_MS = 6 * HOUR_MS;

/** Drops it. Never rejects: the result of a push is worth having even when nothing can be written. */
export async function losePhone(phone: Phone, reason: Finding, parts: Parts): Promise<void> {
  try {
    await drop(phone, reason, parts);
  } catch (err) {
    parts.log.error({ err, phone: phone.id }, 'a phone that takes no more alerts could not be dropped');
  }
}

/** Pure: whether this refusal is one too many. */
export function isHopeless(
  { refusals, refusedSinceMs }: Pick<Phone, 'refusals' | 'refusedSinceMs'>,
  { refusal }: Pick<NotDelivered, 'refusal'>,
  nowMs: number,
): boolean {
  if (refusal === undefined || refusals + 1 < REFUSALS_TO_DROP) return false;
  return refusal === 'message' || nowMs - (refusedSinceMs ?? nowMs) >= SIGNATURE_MS;
}

async function drop(
  phone: Phone,
  reason: Finding,
  { store, clock, log, onPhoneGone, targetsOf }: Parts,
): Promise<void> {
  const now = await store.phones.get(phone.id);
  // It may have subscribed anew while the old subscription was being tried.
  if (now === null || now.endpoint !== phone.endpoint) return;
  const nowMs = clock.nowMs();
  const others = targetsOf(phone.personId).filter(({ targetId }) => targetId !== phone.id);
  const notices = others.map(
    ({ channel, targetId, personId }): NoticeDraft => ({
      id: `${phone.id}.phone-lost.${nowMs.toString(36)}.${targetId}`,
      alarmId: `phone.${phone.id}`,
      chamberId: '',
      kind: 'phone-lost',
      ...{ channel, targetId, personId },
      decidedMs: nowMs,
      urgent: false,
    }),
  );
  await store.phones.lose(phone, reason, nowMs, notices);
  const said = sayFinding(reason, plainEnglish.words);
  log.warn({ phone: phone.id, person: phone.personId, reason: said }, 'phone removed');
  onPhoneGone?.(phone, reason);
}
