// What happens when a reading arrives: the whole story, in order. Both brokers call only this. It must never acknowledge, nor tell
// anybody anything, before the transaction is committed.
import type { Clock } from '../clock.ts';
import type { Admitted } from '../happenings.ts';
import type { Site } from '../site.ts';
import type { Commit, Store } from '../store/store.ts';
import { startDraft } from '../watch/probe-draft.ts';
import type { Watch } from '../watch/watch.ts';
import { type ArrivedMessage, type DecodedMessage, decodeMessage } from './arrived-message.ts';
import { judgeArrivals } from './judge-arrivals.ts';
import { refusalsOf } from './refusals-of.ts';

export interface AdmitParts {
  readonly store: Store;
  readonly watch: Watch;
  readonly site: Site;
  readonly clock: Clock;
}

/** Admits a group of messages. Throws the store's Problem when it could not be stored: then nothing has changed and it may be tried again. */
export async function admitReadings(messages: readonly ArrivedMessage[], parts: AdmitParts): Promise<Admitted> {
  const { store, watch, site, clock } = parts;
  const nowMs = clock.nowMs();
  // 1. Decode: payload → readings and refusals.
  const decoded = messages.map((message) => decodeMessage(message, site.current().mappings));
  // 2. Find or discover each probe and judge the quality of each reading, and anew of those around a late one, on a draft.
  const draft = startDraft(watch.probes);
  const { readings, revised, checkpoints, chamberIds } = await judgeArrivals(decoded, draft, store);
  // 3. Judge the chambers by the alarm rules; decide what is to be told.
  const decision = watch.observe(chamberIds, draft.all(), nowMs);
  // 4. One transaction: readings, roll-ups, flags judged anew, refusals, alarms, notices to send.
  await store.commit({
    readings,
    revised,
    checkpoints,
    discovered: draft.discovered,
    nodeStatus: decoded.flatMap(statusOf),
    batteries: decoded.flatMap(batteryOf),
    refused: decoded.flatMap(({ message, refused }) => refusalsOf(message, refused)),
    watch: decision.work,
  });
  // 5. Only what is stored is true.
  draft.apply();
  decision.apply();
  // 6. The caller tells the screens, wakes the deliverer and acknowledges.
  return {
    chamberIds: [...chamberIds],
    probeIds: [...draft.changed()].map(({ probe }) => probe.id),
    alarms: decision.work.changes,
    noticesWritten: decision.work.notices.length > 0,
    readings: readings.length,
    hasLate: readings.some(({ late }) => late),
    refused: decoded.reduce((sum, one) => sum + one.refused.length, 0),
  };
}

function statusOf({ status, message }: DecodedMessage): NonNullable<Commit['nodeStatus']> {
  return status === null ? [] : [{ ...status, atMs: message.arrivalMs }];
}

/** Only of a node that is known by then: a battery alone makes no node. */
function batteryOf({ battery, admitted, message }: DecodedMessage): NonNullable<Commit['batteries']> {
  const nodeId = admitted[0]?.node;
  if (battery === undefined || nodeId === undefined || message.retained) return [];
  return [{ nodeId, ...battery, atMs: message.arrivalMs }];
}
