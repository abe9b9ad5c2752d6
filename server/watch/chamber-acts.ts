// What people do to chambers and probes.
import { nanoid } from 'nanoid';
import type { Place } from '../../shared/api/probes.ts';
import { Problem } from '../../shared/problem.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import type { Clock } from '../clock.ts';
import type { Chamber, Probe, Store } from '../store/store.ts';
import type { ProbeState } from './probe-book.ts';
import { startDraft } from './probe-draft.ts';
import type { Rounds } from './rounds.ts';
import type { Watch } from './watch.ts';

/** Where a probe stands: a house probe in no chamber. */
interface Standing {
  readonly chamberId: string | null;
  readonly place: Place;
}

interface NewProbe extends Pick<ProbeChange, 'name' | 'chamberId' | 'place'> {
  readonly nodeId: string;
  readonly address: string;
}

export interface ProbeChange {
  readonly name?: string | undefined;
  readonly chamberId?: string | null | undefined;
  readonly place?: Place | null | undefined;
  readonly silenceMinutes?: number | undefined;
  readonly outOfService?: boolean | undefined;
}

interface ChamberActParts {
  readonly store: Store;
  readonly watch: Watch;
  readonly rounds: Rounds;
  readonly clock: Clock;
}

export type ChamberActs = ReturnType<typeof createChamberActs>;

export function createChamberActs({ store, watch, rounds, clock }: ChamberActParts) {
  const stateOf = (id: string): ProbeState => {
    const state = watch.probes.byId(id);
    if (state === undefined) throw new Problem('not-found', ({ problems }) => problems.noSuchProbe);
    return state;
  };
  const refuseUnknown = (target: Standing | null) => {
    if (target?.chamberId && watch.chamber(target.chamberId) === undefined) throw noChamber();
  };
  // The store forgets with a removed chamber which probes stood in it, and without that the records of its batches are empty.
  const removeOrRetire = async (id: string) => {
    const past = await store.batches.inChamber(id, 0, Number.MAX_SAFE_INTEGER);
    if (past.length > 0) await store.chambers.retire(id, clock.nowMs());
    else await store.chambers.remove(id);
  };
  const place = async (state: ProbeState, to: Standing | null) => {
    const fromMs = clock.nowMs();
    await store.probes.place(state.probe.number, to, fromMs);
    const placement = to === null ? null : { probe: state.probe.number, ...to, fromMs, toMs: null, lastMs: null };
    const countsFromMs = state.probe.placement === null ? state.countsFromMs : fromMs;
    watch.probes.put({ ...state, probe: { ...state.probe, placement }, countsFromMs });
  };
  return {
    async addChamber(name: string): Promise<Chamber> {
      const chamber: Chamber = { id: nanoid(10), name, createdMs: clock.nowMs() };
      return rounds.change(
        [chamber.id],
        async () => {
          await store.chambers.add(chamber).catch(sayTaken);
          return chamber;
        },
        () => ({ batches: [{ chamberId: chamber.id, batchId: null }] }),
      );
    },
    async renameChamber(id: string, name: string): Promise<void> {
      const rename = async () => {
        if (!(await store.chambers.rename(id, name).catch(sayTaken))) throw noChamber();
      };
      await rounds.change([id], rename, () => ({ batches: [{ chamberId: id, batchId: null }] }));
    },
    /** Takes a chamber out of use; one that has had a batch is retired, so that its records stay whole. */
    async removeChamber(id: string): Promise<void> {
      const remove = async () => {
        if (watch.chamber(id) === undefined) throw noChamber();
        if (watch.chamber(id)?.healing) throw new Problem('conflict', ({ problems }) => problems.chamberHasBatch);
        for (const state of [...watch.probes.all()])
          if (state.probe.placement?.chamberId === id) await place(state, null);
        await removeOrRetire(id);
      };
      await rounds.change([id], remove, () => ({ batches: [{ chamberId: id, batchId: null }] }));
    },
    /** Puts a retired chamber into use again, under this name; its batches and records are those it had. Its probes are to be placed anew. */
    async bringBackChamber(id: string, name: string): Promise<void> {
      const bringBack = async () => {
        if (!(await store.chambers.bringBack(id, name).catch(sayTaken))) throw noChamber();
      };
      await rounds.change([id], bringBack, () => ({ batches: [{ chamberId: id, batchId: null }] }));
    },
    /** Adds a probe that has not been heard yet, and places it where it is to stand. */
    async addProbe(wanted: NewProbe): Promise<Probe> {
      const target = targetOf(null, wanted);
      const touched = target?.chamberId ? [target.chamberId] : [];
      return rounds.change(
        touched,
        async () => {
          if (watch.probes.find(wanted.nodeId, wanted.address))
            throw new Problem('conflict', ({ problems }) => problems.probeKnown);
          refuseUnknown(target);
          const draft = startDraft(watch.probes);
          const state = draft.at(wanted.nodeId, wanted.address, clock.nowMs());
          const probe = { ...state.probe, name: wanted.name ?? state.probe.name };
          await store.probes.add(probe);
          watch.probes.put({ ...state, probe });
          if (target !== null) await place({ ...state, probe }, target);
          return probe;
        },
        (probe) => ({ probeIds: [probe.id] }),
      );
    },
    async changeProbe(id: string, change: ProbeChange): Promise<void> {
      const before = stateOf(id).probe.placement;
      const target = targetOf(before, change);
      const touched = [before?.chamberId, target?.chamberId].flatMap((one) => one ?? []);
      const apply = async () => {
        refuseUnknown(target);
        const silenceMs = change.silenceMinutes === undefined ? undefined : change.silenceMinutes * MINUTE_MS;
        const fields = { name: change.name, silenceMs, outOfService: change.outOfService };
        const given = Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
        const state = stateOf(id);
        await store.probes.update(state.probe.number, given);
        const changed = { ...state, probe: { ...state.probe, ...given } };
        watch.probes.put(changed);
        const isMoved = target?.chamberId !== before?.chamberId || target?.place !== before?.place;
        if (isMoved) await place(changed, target);
      };
      await rounds.change([...new Set(touched)], apply, () => ({ probeIds: [id] }));
    },
  };
}

/** Where a probe is to stand after a change; a house probe needs no chamber, any other does. */
function targetOf(before: Probe['placement'], change: Pick<ProbeChange, 'chamberId' | 'place'>): Standing | null {
  if (change.place === undefined && change.chamberId === undefined) return before;
  const place = change.place === undefined ? (before?.place ?? 'canopy') : change.place;
  if (place === null) return null;
  if (place === 'house') return { chamberId: null, place };
  const chamberId = change.chamberId === undefined ? (before?.chamberId ?? null) : change.chamberId;
  if (chamberId === null && change.chamberId === null && change.place === undefined) return null;
  if (chamberId === null) throw new Problem('bad-input', ({ problems }) => problems.probeNeedsChamber);
  return { chamberId, place };
}

function noChamber(): Problem {
  return new Problem('not-found', ({ problems }) => problems.noSuchChamber);
}

function sayTaken(error: unknown): never {
  if (error instanceof Problem && error.code === 'conflict') {
    throw new Problem('conflict', ({ problems }) => problems.chamberNameTaken, { cause: error });
  }
  throw error;
}
