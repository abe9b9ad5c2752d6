// The past days of the demo: simulated minute by minute, judged by the quality tests and the alarm rules that judge what arrives, and stored
// thousands of readings to a transaction.
import type { IncomingReading } from '../../shared/readings/reading.ts';
import { MINUTE_MS, SECOND_MS } from '../../shared/units.ts';
import { judgeArrivals } from '../ingest/judge-arrivals.ts';
import { openSite } from '../site.ts';
import type { Commit, Store } from '../store/store.ts';
import type { Decision } from '../watch/decision.ts';
import { openProbeBook } from '../watch/probe-book.ts';
import { startDraft } from '../watch/probe-draft.ts';
import { silentTelling } from '../watch/teller.ts';
import { openWatch, type Watch } from '../watch/watch.ts';
import { type Acknowledgement, createAcknowledging } from './acknowledge-past.ts';
import { PAST_STEP_MS, type RunningTents } from './start-tents.ts';
import type { StoredNursery } from './store-nursery.ts';

/** Readings in a transaction. */
const GROUP = 5_000;
/** A reading has reached the service about so long after it was measured. */
const ON_THE_WAY_MS = SECOND_MS;

/**
 * Moves the tents from the first opening to the last whole minute before `nowMs`, and stores what their nodes measured with the alarms that
 * came of it, all acknowledged. What the crew logged and answered must be stored already.
 */
export async function replayPast(
  store: Store,
  stored: StoredNursery,
  tents: RunningTents,
  nowMs: number,
): Promise<void> {
  const { fromMs } = stored;
  const probes = await openProbeBook(store, fromMs);
  const watch = await openWatch({ store, site: await openSite(store), probes, telling: silentTelling });
  const acknowledging = createAcknowledging(stored);
  const outbox = createOutbox(store);
  for (let timeMs = fromMs; timeMs <= pastEndMs(nowMs); timeMs += PAST_STEP_MS) {
    const readings = tents.advanceTo(timeMs, PAST_STEP_MS).flatMap((one) => one.readings);
    const decision = await takeReadings(store, watch, readings, timeMs + ON_THE_WAY_MS, outbox);
    outbox.addDecision(decision);
    for (const act of acknowledging.due(decision, timeMs)) outbox.addDecision(acknowledge(watch, act));
    if (outbox.isFull()) {
      await outbox.flush();
      // The means of the house are asked of the store, so they follow it.
      await watch.refreshHouse(timeMs);
    }
  }
  await outbox.flush();
}

/** What is later belongs to the present. */
export function pastEndMs(nowMs: number): number {
  return nowMs - MINUTE_MS;
}

async function takeReadings(
  store: Store,
  watch: Watch,
  admitted: readonly IncomingReading[],
  arrivalMs: number,
  outbox: Outbox,
): Promise<Decision> {
  const draft = startDraft(watch.probes);
  const message = { topic: '', payload: new Uint8Array(), arrivalMs, retained: false };
  const judged = await judgeArrivals([{ message, admitted, refused: [], status: null }], draft, store);
  const decision = watch.observe(judged.chamberIds, draft.all(), arrivalMs);
  outbox.addReadings(judged);
  draft.apply();
  return decision;
}

function acknowledge(watch: Watch, { chamberId, alarmId, person, atMs }: Acknowledgement): Decision {
  return watch.act(chamberId, { type: 'acknowledge', alarmId, person, nowMs: atMs });
}

type Judged = Required<Pick<Commit, 'readings' | 'revised' | 'checkpoints'>>;

interface Outbox {
  addReadings(judged: Judged): void;
  /** Takes a decision to store and makes it true in the watch: nobody reads the store in between. */
  addDecision(decision: Decision): void;
  isFull(): boolean;
  flush(): Promise<void>;
}

function createOutbox(store: Store): Outbox {
  const empty = () => ({
    readings: [] as Judged['readings'][number][],
    revised: [] as Judged['revised'][number][],
    checkpoints: [] as Judged['checkpoints'][number][],
    work: [] as Decision['work'][],
  });
  let held = empty();
  return {
    addReadings({ readings, revised, checkpoints }) {
      held.readings.push(...readings);
      held.revised.push(...revised);
      held.checkpoints.push(...checkpoints);
    },
    addDecision(decision) {
      held.work.push(decision.work);
      decision.apply();
    },
    isFull: () => held.readings.length >= GROUP,
    async flush() {
      const { readings, revised, checkpoints, work } = held;
      held = empty();
      const entries = work.flatMap((one) => one.entries);
      const changes = work.flatMap((one) => one.changes);
      await store.commit({ readings, revised, checkpoints, watch: { entries, changes, notices: [] } });
    },
  };
}
