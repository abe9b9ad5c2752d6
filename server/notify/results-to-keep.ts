// After a message: what is kept of it with its target and its phone, so that whom alerts can reach is known without asking the outbox.
import type { Commit, Phone } from '../store/store.ts';
import type { SendResult } from './channels/channel.ts';
import type { DeliveryParts } from './delivery-parts.ts';
import { isHopeless, losePhone } from './lose-phone.ts';

type Parts = Pick<DeliveryParts, 'store' | 'clock' | 'log' | 'onPhoneGone' | 'targetsOf'>;

/** To be written with the outcome. Empty for a phone that this result drops: nothing of it stays. Never rejects. */
export async function resultsToKeep(
  targetId: string,
  phone: Phone | null,
  result: SendResult,
  parts: Parts,
): Promise<Pick<Commit, 'targetResults' | 'phoneResults'>> {
  const atMs = parts.clock.nowMs();
  const { delivered } = result;
  if (phone !== null && !delivered && (result.gone === true || isHopeless(phone, result, atMs))) {
    await losePhone(phone, result.reason, parts);
    return {};
  }
  const finding = delivered ? result.detail : result.reason;
  return {
    targetResults: [{ targetId, delivered, finding, atMs }],
    phoneResults: phone === null ? [] : [{ phoneId: phone.id, kind: kindOf(result), finding, atMs }],
  };
}

function kindOf(result: SendResult) {
  if (result.delivered) return 'accepted';
  return result.refusal === undefined ? 'failed' : 'refused';
}
