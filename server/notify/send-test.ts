// A test alert to one phone, with an honest answer: taken over by the push service or not, and why.
import type { Phone } from '../store/store.ts';
import type { SendResult } from './channels/channel.ts';
import type { DeliveryParts } from './delivery-parts.ts';
import { keepPhoneResult } from './keep-phone-result.ts';
import { buildTestMessage } from './notice-message.ts';

export interface TestResult {
  readonly delivered: boolean;
  readonly reason: string;
}

/** Sends one push now, past the outbox. `delivered` means that the push service has it; only the phone can show the rest. Never rejects. */
export async function sendTest(phone: Phone, parts: DeliveryParts): Promise<TestResult> {
  const result = await trySending(phone, parts);
  await keepPhoneResult(phone, result, parts);
  if (!result.delivered) return { delivered: false, reason: sentence(result.reason) };
  const hint = 'If the phone shows nothing within a minute, look at its notification settings for this page.';
  return { delivered: true, reason: `${sentence(result.detail)} ${hint}` };
}

async function trySending(
  phone: Phone,
  { channels, clock, log, publicUrl, sayContext }: DeliveryParts,
): Promise<SendResult> {
  try {
    const saying = { nowMs: clock.nowMs(), ...sayContext(), publicUrl: publicUrl(), person: null };
    return await channels['web-push'].send(buildTestMessage(saying), phone);
  } catch (err) {
    log.error({ err, phone: phone.id }, 'a test alert could not be sent');
    return { delivered: false, retryable: true, reason: 'it could not be sent: the log of the service says why' };
  }
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
