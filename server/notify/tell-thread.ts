// Tells one alarm to one target: what still waits of it, in order, each with its outcome recorded before the next.
import type { Notice } from '../store/store.ts';
import { type AlarmThread, isReplaced, waitingInOrder } from './alarm-thread.ts';
import type { SendResult } from './channels/channel.ts';
import type { Circuit } from './circuit.ts';
import { decideOutcome, type Outcome, retryUnlessHistory } from './decide-outcome.ts';
import type { DeliveryParts } from './delivery-parts.ts';
import { type FoundTarget, findTarget } from './find-target.ts';
import { gatherFacts } from './gather-facts.ts';
import { keepPhoneResult } from './keep-phone-result.ts';
import { isHistory } from './notice-age.ts';
import { buildNoticeMessage, type NoticeFacts } from './notice-message.ts';
import type { Recorder } from './record-outcome.ts';

export interface Telling {
  readonly parts: DeliveryParts;
  readonly circuit: Circuit;
  readonly recorder: Recorder;
  /** Aborted when closing: nothing is recorded then, and what waits goes on waiting. */
  readonly stop: AbortSignal;
}

/** Never rejects: a notice that fails for whatever reason has that reason as its result. */
export async function tellThread(thread: AlarmThread, telling: Telling): Promise<void> {
  try {
    await tellInOrder(thread, telling);
  } catch (error) {
    if (telling.stop.aborted) return;
    for (const notice of thread.due) await telling.recorder.record(notice, unexpected(error, notice, telling));
  }
}

async function tellInOrder(thread: AlarmThread, telling: Telling): Promise<void> {
  const { parts, recorder, stop } = telling;
  const ofAlarm = await parts.store.notices.ofAlarm(thread.alarmId);
  const waiting = waitingInOrder(ofAlarm, thread).filter((one) => !recorder.holds(one.id));
  let held: Outcome | null = null;
  for (const [index, notice] of waiting.entries()) {
    const outcome: Outcome = held ?? (isReplaced(waiting, index) ? replaced : await tellOne(notice, telling));
    if (stop.aborted) return;
    await recorder.record(notice, outcome);
    // What comes after one that is still to be tried waits for it: a program must hear things in their order.
    if (outcome.type === 'retry') held = { ...outcome, result: 'waits for an earlier notice of the same alarm' };
  }
}

const replaced: Outcome = { type: 'given-up', result: 'replaced by a later notice of the same alarm' };

async function tellOne(notice: Notice, telling: Telling): Promise<Outcome> {
  try {
    return await prepareAndSend(notice, telling);
  } catch (error) {
    return unexpected(error, notice, telling);
  }
}

async function prepareAndSend(notice: Notice, { parts, circuit, stop }: Telling): Promise<Outcome> {
  const nowMs = parts.clock.nowMs();
  if (isHistory(notice.decidedMs, nowMs)) return { type: 'given-up', result: sayHistory(notice) };
  const [facts, target] = await Promise.all([gatherFacts(notice, parts.store), findTarget(notice, parts)]);
  if (facts === null) return { type: 'given-up', result: 'the alarm is not in the store' };
  if (typeof target === 'string') return { type: 'given-up', result: target };
  const askAgainMs = circuit.ask(target.service, nowMs);
  if (askAgainMs !== null)
    return retryUnlessHistory(notice, askAgainMs, 'not tried: the service behind it did not answer several times');
  const result = await send(notice, facts, target, parts, stop);
  circuit.note(target.service, !result.delivered && result.serviceDown === true, parts.clock.nowMs());
  if (target.phone !== null && !stop.aborted) await keepPhoneResult(target.phone, result, parts);
  return decideOutcome(result, notice, parts.clock.nowMs(), parts.random());
}

function send(
  notice: Notice,
  facts: NoticeFacts,
  target: FoundTarget,
  parts: DeliveryParts,
  stop: AbortSignal,
): Promise<SendResult> {
  const { person } = target;
  const saying = { nowMs: parts.clock.nowMs(), ...parts.sayContext(), publicUrl: parts.publicUrl(), person };
  return target.send(buildNoticeMessage(notice, facts, saying), stop);
}

function sayHistory({ result }: Notice): string {
  return `older than 6 h when it could be told: kept as history${result === null ? '' : ` (before: ${result})`}`;
}

function unexpected(error: unknown, notice: Notice, { parts }: Telling): Outcome {
  parts.log.error({ err: error, notice: notice.id }, 'a notice could not be told');
  const reason = `could not be told: ${error instanceof Error ? error.message : String(error)}`;
  return decideOutcome({ delivered: false, retryable: true, reason }, notice, parts.clock.nowMs(), parts.random());
}
