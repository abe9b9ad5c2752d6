// What people do to a batch: open, close the chamber, hold, resume, move on, log, answer checks, finish. Each act is logged with its person.
import { nanoid } from 'nanoid';
import type { Batch } from '../../shared/healing/batch.ts';
import { timesOf } from '../../shared/healing/batch.ts';
import { planStages, stageAt } from '../../shared/healing/batch-clock.ts';
import { type StageName, stageNames } from '../../shared/healing/profile.ts';
import { Problem } from '../../shared/problem.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import type { Clock } from '../clock.ts';
import type { Site } from '../site.ts';
import type { LogRow, Store } from '../store/store.ts';
import { type Corrections, corrections, refuseClosing } from './corrections.ts';
import type { Rounds } from './rounds.ts';
import type { Watch } from './watch.ts';

/** A date this far ahead is a clock that differs, not a plan. */
const AHEAD_MS = 5 * MINUTE_MS;

export interface NewBatch {
  readonly chamberId: string;
  readonly profileId: string;
  readonly code: string;
  readonly scion: string;
  readonly rootstock: string;
  readonly method: string;
  readonly trays: number;
  readonly plants: number;
  readonly openedMs?: number | undefined;
  readonly closedMs?: number | undefined;
}

interface BatchActParts {
  readonly store: Store;
  readonly watch: Watch;
  readonly site: Site;
  readonly rounds: Rounds;
  readonly clock: Clock;
}

type Entry = Partial<Pick<LogRow, 'gapPercent' | 'minutes' | 'about' | 'note' | 'atMs'>>;

export type BatchActs = ReturnType<typeof createBatchActs>;

export function createBatchActs({ store, watch, site, rounds, clock }: BatchActParts) {
  const get = async (id: string): Promise<Batch> => {
    const batch = await store.batches.get(id);
    if (batch === null) throw new Problem('not-found', ({ problems }) => problems.noSuchBatch);
    return batch;
  };
  // The store lists entries of one instant by id: made so that they stand in the order in which they were written.
  let written = 0;
  const nextLogId = () => {
    written += 1;
    const [time, order] = [clock.nowMs().toString(36).padStart(9, '0'), written.toString(36).padStart(6, '0')];
    return `${time}${order}${nanoid(6)}`;
  };
  const note = (batchId: string, kind: string, person: string, entry: Entry = {}) =>
    store.batches.addLog({
      id: nextLogId(),
      batchId,
      kind,
      person,
      atMs: entry.atMs ?? clock.nowMs(),
      gapPercent: entry.gapPercent ?? null,
      minutes: entry.minutes ?? null,
      about: entry.about ?? null,
      note: entry.note ?? '',
    });
  const change = async (id: string, task: (batch: Batch) => Promise<void>): Promise<Batch> => {
    const { chamberId } = await get(id);
    const run = async () => {
      const batch = await get(id);
      if (batch.finishedMs !== null) throw new Problem('conflict', ({ problems }) => problems.batchFinished);
      await task(batch);
      return get(id);
    };
    return rounds.change([chamberId], run, () => ({ batches: [{ chamberId, batchId: id }] }));
  };
  return {
    async open(wanted: NewBatch, person: string): Promise<Batch> {
      const { chamberId } = wanted;
      const nowMs = clock.nowMs();
      refuseFuture(wanted.closedMs, nowMs);
      refuseFuture(wanted.openedMs, nowMs);
      const run = async () => {
        const chamber = watch.chamber(chamberId);
        if (chamber === undefined) throw new Problem('not-found', ({ problems }) => problems.noSuchChamber);
        if (chamber.healing !== null) {
          const inIt = chamber.healing.batch;
          throw new Problem('conflict', ({ problems }) => problems.batchInChamber(inIt.code, chamber.chamber.name));
        }
        refuseUnmeasured(watch, chamberId, chamber.chamber.name);
        const batch = await newBatch(store, wanted, nowMs);
        await store.batches.add(batch);
        await note(batch.id, 'opened', person, { atMs: batch.openedMs });
        if (batch.closedMs !== null) await note(batch.id, 'closed', person, { atMs: batch.closedMs });
        return batch;
      };
      return rounds.change([chamberId], run, (batch) => ({ batches: [{ chamberId, batchId: batch.id }] }));
    },
    correct: (id: string, fields: Corrections, person: string) =>
      change(id, async (batch) => {
        refuseFuture(fields.closedMs, clock.nowMs());
        refuseClosing(batch, fields.closedMs);
        const changes = corrections(batch, fields);
        if (changes.length === 0) return;
        await store.batches.update(id, fields);
        await note(id, 'corrected', person, { about: { changes } });
      }),
    closeChamber: (id: string, closedMs: number | undefined, person: string) =>
      change(id, async (batch) => {
        if (batch.closedMs !== null) throw new Problem('conflict', ({ problems }) => problems.closedAlready);
        const atMs = closedMs ?? clock.nowMs();
        refuseFuture(atMs, clock.nowMs());
        if (atMs < batch.openedMs) throw new Problem('bad-input', ({ problems }) => problems.closedBeforeOpened);
        await store.batches.update(id, { closedMs: atMs });
        await note(id, 'closed', person, { atMs });
      }),
    hold: (id: string, reason: string, person: string) =>
      change(id, async (batch) => {
        if (batch.closedMs === null) throw new Problem('conflict', ({ problems }) => problems.clockNotRunning);
        if (isOnHold(batch)) throw new Problem('conflict', ({ problems }) => problems.onHoldAlready);
        await store.batches.startHold(id, clock.nowMs());
        await note(id, 'hold', person, { note: reason });
      }),
    resume: (id: string, person: string) =>
      change(id, async (batch) => {
        if (!isOnHold(batch)) throw new Problem('conflict', ({ problems }) => problems.notOnHold);
        await store.batches.endHold(id, clock.nowMs());
        await note(id, 'resume', person);
      }),
    moveOn: (id: string, stage: StageName, person: string) =>
      change(id, async (batch) => {
        const nowMs = clock.nowMs();
        const spans = planStages(await documentOf(store, batch), timesOf(batch, site.current().zone), nowMs);
        const now = stageAt(spans, nowMs)?.stage ?? null;
        if (batch.closedMs === null || now === null || order(stage) <= order(now)) {
          throw new Problem('conflict', ({ names, problems }) =>
            now === null
              ? problems.cannotMovePastEnd(names.stages[stage])
              : problems.cannotMoveOn(names.stages[now], names.stages[stage]),
          );
        }
        await store.batches.moveTo(id, stage, nowMs);
        await note(id, 'moved-on', person, { about: { stage } });
      }),
    log: (id: string, kind: string, entry: Entry, person: string) =>
      change(id, async () => {
        refuseFuture(entry.atMs, clock.nowMs());
        await note(id, kind, person, entry);
      }),
    answer: (id: string, checkId: string, answer: { answer: 'yes' | 'no'; note: string }, person: string) =>
      change(id, async (batch) => {
        const chamber = watch.chamber(batch.chamberId);
        const plan = chamber === undefined ? null : watch.plan(chamber, clock.nowMs());
        const check = plan?.checks.find((one) => one.checkId === checkId);
        if (check === undefined) throw new Problem('not-found', ({ problems }) => problems.noSuchCheck);
        await store.batches.answer({ batchId: id, checkId, ...answer, atMs: clock.nowMs(), person });
        await note(id, 'check', person, {
          about: { check: { id: check.id, checkId, answer: answer.answer } },
          note: answer.note,
        });
      }),
    finish: (id: string, takenPlants: number, text: string, person: string) =>
      change(id, async (batch) => {
        if (takenPlants > batch.plants) {
          throw new Problem('bad-input', ({ problems }) => problems.tooManyTaken(batch.plants), {
            faults: [{ where: '/takenPlants', reason: ({ problems }) => problems.tooManyTaken(batch.plants) }],
          });
        }
        const nowMs = clock.nowMs();
        if (isOnHold(batch)) await store.batches.endHold(id, nowMs);
        await note(id, 'finished', person, { note: text });
        await store.batches.update(id, { finishedMs: nowMs, takenPlants });
      }),
  };
}

/** A batch that nothing measures cannot be watched; a probe that has not spoken yet will do. */
function refuseUnmeasured(watch: Watch, chamberId: string, name: string): void {
  const isMeasured = [...watch.probes.all()].some(
    ({ probe: { placement, outOfService } }) =>
      placement?.chamberId === chamberId && placement.place === 'canopy' && !outOfService,
  );
  if (isMeasured) return;
  throw new Problem('conflict', ({ problems }) => problems.nothingMeasures(name));
}

function isOnHold(batch: Batch): boolean {
  return batch.holds.some(({ toMs }) => toMs === null);
}

function order(stage: StageName): number {
  return stageNames.indexOf(stage);
}

function refuseFuture(ms: number | undefined, nowMs: number): void {
  if (ms !== undefined && ms > nowMs + AHEAD_MS) throw new Problem('bad-input', ({ problems }) => problems.stillToCome);
}

async function documentOf(store: Store, batch: Batch) {
  const profile = await store.profiles.get(batch.profileId, batch.profileVersion);
  if (profile === null) throw new Error(`batch ${batch.id} has pinned a profile version that is not stored`);
  return profile.document;
}

async function newBatch(store: Store, wanted: NewBatch, nowMs: number): Promise<Batch> {
  const profile = await store.profiles.get(wanted.profileId);
  if (profile === null) throw new Problem('not-found', ({ problems }) => problems.chooseProfile);
  const { openedMs, closedMs, ...rest } = wanted;
  const opened = openedMs ?? Math.min(nowMs, closedMs ?? nowMs);
  if (closedMs !== undefined && closedMs < opened) {
    throw new Problem('bad-input', ({ problems }) => problems.closedBeforeOpened);
  }
  const open = { finishedMs: null, takenPlants: null, holds: [], moves: [] };
  return {
    ...rest,
    id: nanoid(10),
    profileVersion: profile.version,
    openedMs: opened,
    enteredMs: nowMs,
    closedMs: closedMs ?? null,
    ...open,
  };
}
