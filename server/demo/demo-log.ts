// What the invented crew has written down and answered so far: consistent with what `crew.ts` does to the simulated tents.
import type { logKinds } from '../../shared/api/log-entry.ts';
import { HOUR_MS, MINUTE_MS } from '../../shared/units.ts';
import { type CrewPlan, LOOK_BEFORE_VENTING_MS, LOOK_GAP_PERCENT, LOOK_MS } from './crew.ts';
import { ventingGaps } from './venting-gaps.ts';

export interface DemoLogEntry {
  readonly kind: (typeof logKinds)[number];
  readonly atMs: number;
  /** Only with `gap`. */
  readonly gapPercent: number | null;
  readonly note: string;
  readonly person: string;
}

/** The log of one batch up to `untilMs`, oldest first. `crew` are the names of the people who write, at least one. */
export function writeDemoLog(plan: CrewPlan, untilMs: number, crew: readonly [string, ...string[]]): DemoLogEntry[] {
  const entries = [...closedEntries(plan), ...lookEntries(plan), ...ventingEntries(plan)];
  return entries
    .filter((entry) => entry.atMs <= untilMs)
    .sort((a, b) => a.atMs - b.atMs)
    .map((entry, index) => ({ gapPercent: null, ...entry, person: crew[index % crew.length] ?? crew[0] }));
}

type Draft = Pick<DemoLogEntry, 'kind' | 'atMs' | 'note'> & { readonly gapPercent?: number };

function closedEntries({ closedMs }: CrewPlan): Draft[] {
  return [
    { kind: 'mist', atMs: closedMs - 10 * MINUTE_MS, note: 'Floor and film misted before closing.' },
    { kind: 'film-wet', atMs: closedMs + 3 * HOUR_MS, note: 'Fine drops all over the inside.' },
    { kind: 'limp', atMs: closedMs + 17 * HOUR_MS, note: 'Two trays by the door slightly limp; left closed.' },
    { kind: 'mist', atMs: closedMs + 17.2 * HOUR_MS, note: 'Light mist by hand at the door end.' },
    { kind: 'erect', atMs: closedMs + 24.5 * HOUR_MS, note: 'All scions up.' },
    { kind: 'note', atMs: closedMs + 66 * HOUR_MS, note: 'Screen checked: no direct sun on the tent at noon.' },
  ];
}

function lookEntries({ ventingMs }: CrewPlan): Draft[] {
  const lookMs = ventingMs - LOOK_BEFORE_VENTING_MS;
  return [
    { kind: 'gap', atMs: lookMs, gapPercent: LOOK_GAP_PERCENT, note: 'A look inside and a little fresh air.' },
    { kind: 'gap', atMs: lookMs + LOOK_MS, gapPercent: 0, note: 'Closed again.' },
    { kind: 'erect', atMs: lookMs + LOOK_MS, note: 'Scions erect, first callus to be seen at the clip.' },
  ];
}

function ventingEntries({ ventingMs, hardeningMs }: CrewPlan): Draft[] {
  const steps = ventingGaps.map(({ afterHours, gapPercent }): Draft => {
    return { kind: 'gap', atMs: ventingMs + afterHours * HOUR_MS, gapPercent, note: '' };
  });
  return [
    ...steps,
    { kind: 'erect', atMs: ventingMs + 1.5 * HOUR_MS, note: 'Still up an hour and a half after the first step.' },
    { kind: 'gap', atMs: hardeningMs, gapPercent: 100, note: 'Fully open.' },
    { kind: 'erect', atMs: hardeningMs + 2 * HOUR_MS, note: 'Up with the tent open.' },
  ];
}
