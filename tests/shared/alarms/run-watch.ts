// A chamber's watch driven step by step by a test: it keeps the state and hands out what changed.
import type { Alarm, RuleId } from '../../../shared/alarms/alarm.ts';
import { reduce } from '../../../shared/alarms/reduce.ts';
import type { Scene } from '../../../shared/alarms/rules/rule.ts';
import {
  type ChamberWatch,
  type Effect,
  emptyWatch,
  keyOf,
  type WatchEvent,
} from '../../../shared/alarms/watch-state.ts';
import { MINUTE_MS, SECOND_MS } from '../../../shared/units.ts';
import { climateOf, NOON_MS, sceneAt } from './scenes.ts';

export type AlarmChanged = Extract<Effect, { type: 'alarm-changed' }>;

export interface RunningWatch {
  state(): ChamberWatch;
  /** The occurrence that is not back to normal. */
  alarm(rule: RuleId, probeId?: string): Alarm | null;
  /** Takes an event; answers with the changes of alarms. */
  take(event: WatchEvent): AlarmChanged[];
  /** Judges a scene `afterMs` noon. */
  see(afterMs: number, change?: Partial<Scene>): AlarmChanged[];
  /** Judges this temperature every ten seconds from one time to another, both included, ms after noon. */
  heat(temperature: number, fromMs: number, toMs: number): AlarmChanged[];
}

export function runWatch(start: ChamberWatch = emptyWatch('tent-1')): RunningWatch {
  let state = start;
  const take = (event: WatchEvent) => {
    const reduction = reduce(state, event);
    state = reduction.state;
    return reduction.effects.filter((effect) => effect.type === 'alarm-changed');
  };
  const see = (afterMs: number, change: Partial<Scene> = {}) =>
    take({ type: 'observe', scene: sceneAt(afterMs, change) });
  return {
    state: () => state,
    alarm: (rule, probeId) => state.entries[keyOf(rule, probeId ?? null)]?.alarm ?? null,
    take,
    see,
    heat(temperature, fromMs, toMs) {
      const changes: AlarmChanged[] = [];
      for (let atMs = fromMs; atMs <= toMs; atMs += 10 * SECOND_MS)
        changes.push(...see(atMs, { climate: climateOf(temperature, 90) }));
      return changes;
    },
  };
}

/** A watch with a heat alarm: 28.5 °C since noon, told at 12:01. */
export function runHotWatch(): RunningWatch & { readonly hot: Alarm } {
  const watch = runWatch();
  watch.heat(28.5, 0, MINUTE_MS);
  const hot = watch.alarm('heat');
  if (hot === null) throw new Error('a minute at 28.5 °C should have raised an alarm');
  return { ...watch, hot };
}

type Act<T extends WatchEvent['type']> = Extract<WatchEvent, { type: T }>;

export function acknowledge({ id }: Alarm, afterMs: number, person = 'Ann'): Act<'acknowledge'> {
  return { type: 'acknowledge', alarmId: id, person, nowMs: NOON_MS + afterMs };
}

export function shelve({ id }: Alarm, afterMs: number, untilMs: number, person = 'Ann'): Act<'shelve'> {
  const times = { nowMs: NOON_MS + afterMs, untilMs: NOON_MS + untilMs };
  return { type: 'shelve', alarmId: id, person, reason: 'the heating is being repaired', ...times };
}

export function unshelve({ id }: Alarm, afterMs: number, person: string | null = 'Ann'): Act<'unshelve'> {
  return { type: 'unshelve', alarmId: id, person, nowMs: NOON_MS + afterMs };
}

/** What changed, in a line each: `escalated: acknowledged → unacknowledged`. */
export function told(changes: readonly AlarmChanged[]): string[] {
  return changes.map(({ change, from, alarm }) => `${alarm.rule} ${change}: ${from} → ${alarm.state}`);
}
