// One look of the service at itself, each round before the chambers: clock, gaps, broker, disk, and whom alerts can reach. It is decided and stored like
// a chamber's; and when nothing can be stored, what it decided is told from memory and stored when there is room again.
import type { Logger } from 'pino';
import { SERVICE_ID } from '../../shared/alarms/alarm.ts';
import { LEAST_FREE_PERCENT } from '../../shared/alarms/service/disk-nearly-full.ts';
import { followOutage, moveOutage, type OutageMemory } from '../../shared/alarms/service/follow-outage.ts';
import type { DiskNow, ServiceScene } from '../../shared/alarms/service/service-scene.ts';
import type { BatchPlace } from '../../shared/alarms/service-facts.ts';
import { Problem } from '../../shared/problem.ts';
import { SECOND_MS } from '../../shared/units.ts';
import type { Clock } from '../clock.ts';
import type { Announce } from '../happenings.ts';
import type { Ballast } from '../store/ballast.ts';
import type { Commit, Store } from '../store/store.ts';
import type { ClockLook } from './clock-watch.ts';
import type { Decision } from './decision.ts';
import { gatherOutage } from './gather-outage.ts';
import { setBackAt } from './move-clock.ts';
import { OUTAGE_SETTING, type OutageBook } from './outage-book.ts';
import { diskNow, type ServiceSenses } from './service-senses.ts';
import type { Unstored } from './unstored.ts';
import type { Watch } from './watch.ts';

/** That it is alive is written this often: a gap is known to so much, and the disk is spared. */
const ALIVE_EVERY_MS = 30 * SECOND_MS;
/** Above this share of free room the ballast is taken. */
const PLENTY_PERCENT = 2 * LEAST_FREE_PERCENT;

export interface ServiceTurnParts {
  readonly store: Store;
  readonly watch: Watch;
  readonly outage: OutageBook;
  readonly clock: Clock;
  readonly lookAtClock: () => ClockLook;
  readonly senses: ServiceSenses;
  readonly unstored: Unstored;
  readonly ballast: Ballast;
  readonly announce: Announce;
  readonly log: Logger;
}

/** Makes the turn; call it in the turnstile. Trouble of the store does not make it throw. */
export function createServiceTurn(parts: ServiceTurnParts): (sinceLastMs: number) => Promise<void> {
  const { watch, outage, clock, senses, announce } = parts;
  let writtenMs = Number.NEGATIVE_INFINITY;
  return async (sinceLastMs) => {
    const { jumpMs, stoppedMs } = parts.lookAtClock();
    const awayMs = Math.max(stoppedMs, sinceLastMs);
    const nowMs = clock.nowMs();
    const before = jumpMs === null ? outage.memory() : afterJump(parts, jumpMs);
    const moved = jumpMs === null ? null : watch.moveClock(jumpMs, nowMs);
    moved?.apply();
    const brokerTrouble = senses.brokerTrouble();
    const disk = await diskNow(senses);
    await tendBallast(parts, disk);
    const step = followOutage(before, {
      ...{ nowMs, awayMs, canHear: brokerTrouble === null, lateMs: outage.lateMs() },
      isEachHeard: isEachHeard(watch, before.settling?.toMs ?? nowMs),
    });
    const scene: ServiceScene = {
      ...{ nowMs, chamberId: SERVICE_ID, batchId: null, brokerTrouble, clockJumpMs: jumpMs },
      openBatches: openBatches(watch),
      disk,
      outage: step.due === null ? null : await gatherOutage(step.due, watch, parts.store.readings),
      reach: await senses.reach(),
    };
    const decision = watch.observeService(scene);
    const isNews = decision.work.entries.length > 0 || moved !== null || isTurning(outage.memory(), step.memory);
    if (isNews || nowMs - writtenMs >= ALIVE_EVERY_MS || parts.unstored.isWaiting()) {
      await write(parts, [moved, decision], step.memory, jumpMs);
      writtenMs = nowMs;
    }
    outage.keep(step.memory);
    decision.apply();
    const { changes, notices } = decision.work;
    if (changes.length + notices.length > 0) await announce({ alarms: changes, noticesWritten: notices.length > 0 });
  };
}

/** The memory under the clock as it is now. Ask before the probes are under it. */
function afterJump({ outage, watch, clock }: ServiceTurnParts, jumpMs: number): OutageMemory {
  const memory = moveOutage(outage.memory(), jumpMs);
  if (jumpMs > 0) return memory;
  return { ...memory, setBack: setBackAt(clock.nowMs(), memory.setBack, watch.probes.all()) };
}

/** The ballast is no reason to fail: it is tried again with the next round. */
async function tendBallast({ ballast, log }: ServiceTurnParts, { freePercent, storeTrouble }: DiskNow): Promise<void> {
  try {
    if (storeTrouble !== null) await ballast.give();
    else if (freePercent !== null && freePercent > PLENTY_PERCENT) await ballast.take();
  } catch (err) {
    log.warn({ err }, 'the ballast beside the database could not be tended');
  }
}

/** One transaction; when the store has no room, nothing of it is forgotten. */
async function write(
  { store, clock, unstored, log }: ServiceTurnParts,
  decisions: readonly (Decision | null)[],
  memory: OutageMemory,
  jumpMs: number | null,
): Promise<void> {
  const works = decisions.flatMap((one) => one?.work ?? []);
  const work: Commit = {
    ...unstored.withWaiting(works),
    settings: [{ name: OUTAGE_SETTING, value: memory }],
    ...(jumpMs !== null && { clockMoved: { byMs: jumpMs, nowMs: clock.nowMs() } }),
  };
  try {
    await store.commit(work);
    unstored.stored();
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    log.error({ err: error }, 'what the service found out about itself cannot be stored; it is told from memory');
    await unstored.keep(works);
  }
}

/** A gap began, ended or was told. */
function isTurning(before: OutageMemory, after: OutageMemory): boolean {
  const marks = ({ lostSinceMs, settling }: OutageMemory) => JSON.stringify([lostSinceMs, settling]);
  return marks(before) !== marks(after);
}

function openBatches(watch: Watch): BatchPlace[] {
  return watch
    .chambers()
    .flatMap(({ chamber, healing }) =>
      healing === null ? [] : [{ chamberId: chamber.id, chamberName: chamber.name, batchCode: healing.batch.code }],
    );
}

/** True when every canopy probe beside a batch has measured something since. */
function isEachHeard(watch: Watch, sinceMs: number): boolean {
  const withBatch = new Set(openBatches(watch).map(({ chamberId }) => chamberId));
  return [...watch.probes.all()]
    .filter(
      ({ probe: { placement, outOfService } }) =>
        placement?.place === 'canopy' && !outOfService && withBatch.has(placement.chamberId ?? ''),
    )
    .every(({ newest }) => newest !== null && newest.timeMs >= sinceMs);
}
