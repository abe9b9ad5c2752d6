// Changes to the probe book that are decided but not yet stored.

import { freshQuality } from '../../shared/readings/quality/quality-run.ts';
import { DEFAULT_SILENCE_MS } from '../../shared/readings/silence.ts';
import type { Probe } from '../store/store.ts';
import type { ProbeBook, ProbeState } from './probe-book.ts';

export interface ProbeDraft {
  readonly discovered: readonly Probe[];
  /** The probe as this draft sees it; an unknown one is discovered. */
  at(nodeId: string, address: string, nowMs: number): ProbeState;
  put(state: ProbeState): void;
  /** All probes, changed ones in their changed form. */
  all(): Iterable<ProbeState>;
  changed(): Iterable<ProbeState>;
  /** Makes the changes true. */
  apply(): void;
}

export function startDraft(book: ProbeBook): ProbeDraft {
  const changes = new Map<string, ProbeState>();
  const discovered: Probe[] = [];
  const byAddress = new Map<string, string>();
  const discover = (nodeId: string, address: string, nowMs: number): ProbeState => {
    const number = book.nextNumber() + discovered.length;
    const name = address === '' ? nodeId : `${nodeId} ${address}`;
    const rest = { silenceMs: DEFAULT_SILENCE_MS, outOfService: false, discoveredMs: nowMs, placement: null };
    const probe: Probe = { number, id: `p${number}`, nodeId, address, name, ...rest };
    discovered.push(probe);
    return {
      probe,
      newest: null,
      storedToMs: 0,
      calibrations: [],
      quality: freshQuality,
      watchedSinceMs: nowMs,
      countsFromMs: 0,
    };
  };
  const put = (state: ProbeState) => {
    changes.set(state.probe.id, state);
    byAddress.set(`${state.probe.nodeId}/${state.probe.address}`, state.probe.id);
  };
  return {
    discovered,
    at(nodeId, address, nowMs) {
      const changed = changes.get(byAddress.get(`${nodeId}/${address}`) ?? '');
      const state = changed ?? book.find(nodeId, address) ?? discover(nodeId, address, nowMs);
      if (changed === undefined) put(state);
      return state;
    },
    put,
    *all() {
      for (const state of book.all()) if (!changes.has(state.probe.id)) yield state;
      yield* changes.values();
    },
    changed: () => changes.values(),
    apply() {
      for (const state of changes.values()) book.put(state);
    },
  };
}
