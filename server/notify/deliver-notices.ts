// Gets every notice of the outbox told, once if it can be and again if it must: takes what is due, sends it, records what became of it.
// Whether somebody is to be told is decided elsewhere (`shared/telling/telling-due.ts`); nothing here throws into the watch.
import type { Alarm } from '../../shared/alarms/alarm.ts';
import type { NoticeDraft } from '../../shared/telling/notice.ts';
import { MINUTE_MS, SECOND_MS } from '../../shared/units.ts';
import type { Notice } from '../store/store.ts';
import { type AlarmThread, threadKey, threadsOf } from './alarm-thread.ts';
import { createCircuit } from './circuit.ts';
import { type DeliveryParts, laneWidths } from './delivery-parts.ts';
import { createLane } from './lane.ts';
import { oneAtATime } from './one-at-a-time.ts';
import { createRecorder } from './record-outcome.ts';
import { sendTest, type TestResult, type TestTarget } from './send-test.ts';
import { type Telling, tellThread } from './tell-thread.ts';
import { tellUnstored } from './tell-unstored.ts';

export interface Delivery {
  /** There may be something to tell: call after each commit that wrote notices, and once at start. Returns at once. */
  wake(): void;
  /** Takes what is due and tells it; resolves when nothing is under way any more. Never rejects. */
  deliverNotices(): Promise<void>;
  sendTest(target: TestTarget): Promise<TestResult>;
  /** Tells a notice of an alarm that cannot be stored; the result when it was taken over, else null. Never rejects. */
  tellUnstored(notice: NoticeDraft, alarm: Alarm): Promise<string | null>;
  /** Begins nothing new, waits for what is under way (5 s at most), then breaks it off: it goes on waiting in the outbox. */
  close(): Promise<void>;
}

/** How many notices are read at once. */
const PAGE = 200;
/** Not sooner: what is under way is still due in the outbox, and asking for it again and again would find nothing else. */
const SHORTEST_PAUSE_MS = SECOND_MS;
/** Not later: the clock may be set while we wait. */
const LONGEST_PAUSE_MS = MINUTE_MS;
const STORE_PAUSE_MS = 5 * SECOND_MS;
const CLOSE_WITHIN_MS = 5 * SECOND_MS;

export function createDelivery(parts: DeliveryParts): Delivery {
  const { store, clock, log } = parts;
  const recorder = createRecorder(parts);
  const stop = new AbortController();
  const telling: Telling = { parts, circuit: createCircuit(), recorder, stop: stop.signal };
  const lanes = {
    'web-push': createLane(laneWidths['web-push']),
    email: createLane(laneWidths.email),
    webhook: createLane(laneWidths.webhook),
  };
  const underWay = new Map<string, { readonly notices: number; readonly job: Promise<void> }>();
  let isClosing = false;
  const timer = createTimer(() => void take());

  const take = oneAtATime(async () => {
    if (isClosing) return;
    try {
      await takeDue();
      timer.set(pauseUntil(await store.notices.nextDueMs(), clock.nowMs()));
    } catch (err) {
      log.error({ err }, 'the outbox of notices cannot be read');
      timer.set(STORE_PAUSE_MS);
    }
  });

  async function takeDue(): Promise<void> {
    // Not waited for: what is held is not sent again anyway, and an alert comes first.
    void recorder.catchUp();
    // What ends while the outbox is being read may be in what was read: only what was not under way before counts.
    const before = new Set(underWay.keys());
    const inHand = [...underWay.values()].reduce((sum, one) => sum + one.notices, recorder.heldCount());
    const due = await store.notices.due(clock.nowMs(), PAGE + inHand);
    const isFree = (one: Notice) =>
      !recorder.holds(one.id) && !before.has(threadKey(one)) && !before.has(threadKey({ ...one, alarmId: null }));
    threadsOf(due.filter(isFree), clock.nowMs()).forEach(start);
  }

  function start(thread: AlarmThread): void {
    const job = lanes[thread.channel](async () => {
      if (!isClosing) await tellThread(thread, telling);
    }).then(() => {
      underWay.delete(thread.key);
      // There may be more than was taken; while others are under way the timer looks.
      if (underWay.size === 0) void take();
    });
    underWay.set(thread.key, { notices: thread.due.length, job });
  }

  async function settled(): Promise<void> {
    await take();
    await recorder.catchUp();
    await Promise.all([...underWay.values()].map((one) => one.job));
  }

  return {
    wake: () => void take(),
    async deliverNotices() {
      do await settled();
      while (underWay.size > 0);
    },
    sendTest: (target) => sendTest(target, parts),
    tellUnstored: (notice, alarm) => tellUnstored(notice, alarm, parts),
    async close() {
      isClosing = true;
      timer.stop();
      await withinMs(settled(), parts.closeWithinMs ?? CLOSE_WITHIN_MS);
      stop.abort();
    },
  };
}

function pauseUntil(nextMs: number | null, nowMs: number): number | null {
  return nextMs === null ? null : Math.min(LONGEST_PAUSE_MS, Math.max(SHORTEST_PAUSE_MS, nextMs - nowMs));
}

/** One timer; null = none. Stopped, it rings no more, whatever is set. */
function createTimer(ring: () => void) {
  let timer: NodeJS.Timeout | undefined;
  let isStopped = false;
  return {
    set(pauseMs: number | null): void {
      clearTimeout(timer);
      if (pauseMs !== null && !isStopped) timer = setTimeout(ring, pauseMs);
    },
    stop(): void {
      isStopped = true;
      clearTimeout(timer);
    },
  };
}

async function withinMs(work: Promise<void>, ms: number): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const limit = new Promise<void>((resolve) => {
    timer = setTimeout(resolve, ms);
  });
  await Promise.race([work, limit]);
  clearTimeout(timer);
}
