// What one event makes of one or more places: the alarms, delays and notices to store, and what then becomes true in memory.
import type { Alarm } from '../../shared/alarms/alarm.ts';
import type { ChamberWatch, Reduction } from '../../shared/alarms/watch-state.ts';
import type { WhyNothing } from '../../shared/alarms/why-nothing.ts';
import type { Commit } from '../store/store.ts';
import type { Teller } from './teller.ts';

export type WatchWork = NonNullable<Commit['watch']>;

/** What a turn decided. `work` is stored first; only then `apply` makes it true in memory. */
export interface Decision {
  readonly work: WatchWork;
  /** Why nothing happened, when an act had no effect. */
  readonly reason: WhyNothing | null;
  apply(): void;
}

/** What one event has made of one place. */
export interface Turn {
  /** When the turn is, ms since 1970; turns decided together share it. */
  readonly atMs: number;
  readonly reduction: Reduction;
  readonly keep: (state: ChamberWatch) => void;
}

interface DecisionParts {
  readonly teller: Teller;
  /** Everything that is watched, as it is before the turn. */
  readonly watches: readonly ChamberWatch[];
  /** What is not critical waits for one message about all of it. */
  readonly isHeld: boolean;
}

/** Puts turns together into what is stored in one transaction, with the notices they call for. */
export function makeDecision(turns: readonly Turn[], { teller, watches, isHeld }: DecisionParts): Decision {
  const effects = turns.flatMap(({ reduction: { state, effects: all } }) =>
    all.map((effect) => ({ chamberId: state.chamberId, effect })),
  );
  const changes = effects.flatMap(({ effect }) => (effect.type === 'alarm-changed' ? [effect] : []));
  const entries = effects.flatMap(({ chamberId, effect }) =>
    effect.type === 'entry-changed' ? [{ chamberId, key: effect.key, entry: effect.entry }] : [],
  );
  const after = new Map(watches.map((watch) => [watch.chamberId, watch]));
  for (const { reduction } of turns) after.set(reduction.state.chamberId, reduction.state);
  const alarms = [...after.values()].flatMap(activeAlarms);
  const told = teller.decide({ changes, alarms, nowMs: turns[0]?.atMs ?? null, isHeld });
  const nothing = effects.flatMap(({ effect }) => (effect.type === 'nothing' ? [effect.reason] : []));
  return {
    work: { entries, changes, notices: told.notices },
    reason: nothing[0] ?? null,
    apply() {
      for (const { reduction, keep } of turns) keep(reduction.state);
      told.apply();
    },
  };
}

function activeAlarms({ entries }: ChamberWatch): Alarm[] {
  return Object.values(entries).flatMap(({ alarm }) => alarm ?? []);
}
