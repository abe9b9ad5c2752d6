// After a message: what became of it is kept with its target, so that whom alerts can reach is known without asking the outbox.
import type { SendResult } from './channels/channel.ts';
import type { DeliveryParts } from './delivery-parts.ts';

/** Never rejects: the result is worth having even when it cannot be kept. */
export async function keepTargetResult(
  targetId: string,
  result: SendResult,
  { store, clock, log }: Pick<DeliveryParts, 'store' | 'clock' | 'log'>,
): Promise<void> {
  const { delivered } = result;
  const finding = result.delivered ? result.detail : result.reason;
  try {
    await store.targetResults.put({ targetId, delivered, finding, atMs: clock.nowMs() });
  } catch (err) {
    log.error({ err, target: targetId }, 'the result of a message could not be kept with its target');
  }
}
