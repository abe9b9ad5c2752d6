// Tells one thread to one target: what still waits of an alarm, in order, each with its outcome recorded before the next; or in one message
// what could not be told for six hours.
import { finding, sayFinding } from '../../shared/finding.ts';
import { plainEnglish } from '../../shared/plain-english.ts';
import type { Notice } from '../store/store.ts';
import { type AlarmThread, isReplaced, waitingInOrder } from './alarm-thread.ts';
import type { Circuit } from './circuit.ts';
import { composeHistory, composeMessage } from './compose-message.ts';
import { decideOutcome, type Outcome, retryUnlessForgotten } from './decide-outcome.ts';
import type { DeliveryParts } from './delivery-parts.ts';
import { findTarget } from './find-target.ts';
import { isForgotten, isHistory } from './notice-age.ts';
import type { Recorder, Tried } from './record-outcome.ts';
import { resultsToKeep } from './results-to-keep.ts';

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
    if (thread.alarmId === null) await tellHistory(thread.due, telling);
    else await tellInOrder(thread.alarmId, thread, telling);
  } catch (error) {
    if (telling.stop.aborted) return;
    for (const notice of thread.due) await telling.recorder.record([notice], unexpected(error, notice, telling));
  }
}

async function tellInOrder(alarmId: string, thread: AlarmThread, telling: Telling): Promise<void> {
  const { parts, recorder, stop } = telling;
  const ofAlarm = await parts.store.notices.ofAlarm(alarmId);
  const nowMs = parts.clock.nowMs();
  const waiting = waitingInOrder(ofAlarm, thread).filter(
    (one) => !recorder.holds(one.id) && !isHistory(one.decidedMs, nowMs),
  );
  let held: Tried | null = null;
  for (const [index, notice] of waiting.entries()) {
    const tried: Tried = held ?? (isReplaced(waiting, index) ? replaced : await tellOne(notice, telling));
    if (stop.aborted) return;
    await recorder.record([notice], tried);
    // What comes after one that is still to be tried waits for it: a program must hear things in their order.
    const { outcome } = tried;
    if (outcome.type === 'retry')
      held = { outcome: { ...outcome, result: 'waits for an earlier notice of the same alarm' } };
  }
}

const replaced = giveUp('replaced by a later notice of the same alarm');

async function tellOne(notice: Notice, telling: Telling): Promise<Tried> {
  try {
    return await send([notice], telling);
  } catch (error) {
    return unexpected(error, notice, telling);
  }
}

/** All of it has one outcome; what is older than anybody wants to know is given up. */
async function tellHistory(due: readonly Notice[], telling: Telling): Promise<void> {
  const { parts, recorder, stop } = telling;
  const forgotten = (one: Notice) => isForgotten(one.decidedMs, parts.clock.nowMs());
  const [old, told] = [due.filter(forgotten), due.filter((one) => !forgotten(one))];
  for (const notice of old) await recorder.record([notice], giveUp(sayForgotten(notice)));
  if (told.length === 0) return;
  const tried = await send(told, telling);
  if (stop.aborted) return;
  await recorder.record(told, { ...tried, outcome: asHistory(tried.outcome) });
}

/** One notice as itself, several that are history as one message. */
async function send(notices: readonly Notice[], { parts, circuit, stop }: Telling): Promise<Tried> {
  const [first] = notices;
  if (first === undefined) throw new Error('there is nothing to send');
  const target = await findTarget(first, parts);
  if ('missing' in target) return giveUp(sayFinding(target.missing, plainEnglish.words));
  const nowMs = parts.clock.nowMs();
  const isOld = isHistory(first.decidedMs, nowMs);
  const composed = isOld ? await composeHistory(notices, target, parts) : await composeMessage(first, target, parts);
  if (composed === null) return giveUp('the alarm is not in the store');
  const askAgainMs = circuit.ask(target.service, nowMs);
  if (askAgainMs !== null) return { outcome: retryUnlessForgotten(first, askAgainMs, notTried) };
  const { message, link } = composed;
  // A person may press at once what a mail or a chat shows; a push must leave at once, and comes back before anybody can press.
  const isPush = first.channel === 'web-push';
  if (!isPush && link !== null) await parts.store.commit({ links: [link] });
  const result = await target.send(message, stop);
  circuit.note(target.service, !result.delivered && result.serviceDown === true, parts.clock.nowMs());
  const outcome = decideOutcome(result, first, parts.clock.nowMs(), parts.random());
  if (stop.aborted) return { outcome };
  const results = await resultsToKeep(first.targetId, target.phone, result, parts);
  return { outcome, ...results, links: isPush && link !== null ? [link] : [] };
}

const notTried = 'not tried: the service behind it did not answer several times';

function giveUp(result: string): Tried {
  return { outcome: { type: 'given-up', result } };
}

function asHistory(outcome: Outcome): Outcome {
  return outcome.type === 'sent'
    ? { ...outcome, result: `told as history in one message; ${outcome.result}` }
    : outcome;
}

function sayForgotten({ result }: Notice): string {
  return `older than 7 days when it could be told${result === null ? '' : ` (before: ${result})`}`;
}

function unexpected(error: unknown, notice: Notice, { parts }: Telling): Tried {
  parts.log.error({ err: error, notice: notice.id }, 'a notice could not be told');
  const reason = finding('asWritten', `could not be told: ${error instanceof Error ? error.message : String(error)}`);
  const result = { delivered: false, retryable: true, reason } as const;
  return { outcome: decideOutcome(result, notice, parts.clock.nowMs(), parts.random()) };
}
