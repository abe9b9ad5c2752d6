// What holds for any course of events: random air, silence, acts, batches and pauses, on the reducer as it serves the watch.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Alarm, alarmStates, type RuleId } from '../../../shared/alarms/alarm.ts';
import { lifeCycleEvents, nextState } from '../../../shared/alarms/life-cycle.ts';
import { reduce } from '../../../shared/alarms/reduce.ts';
import { ruleOf } from '../../../shared/alarms/rules/index.ts';
import type { SceneReport } from '../../../shared/alarms/rules/scene-care.ts';
import {
  type ChamberWatch,
  type Effect,
  emptyWatch,
  outOfServiceOf,
  type WatchEvent,
} from '../../../shared/alarms/watch-state.ts';
import { MINUTE_MS, SECOND_MS } from '../../../shared/units.ts';
import type { AlarmChanged } from './run-watch.ts';
import { climateOf, corridor, NOON_MS, probeHeard, sceneAt } from './scenes.ts';

/** An act is written by the place of its alarm among those in force, since ids are only known as they arise. */
type Step = { readonly afterMs: number } & (
  | {
      readonly type: 'observe';
      readonly temperature: number | null;
      readonly humidity: number | null;
      readonly batchId: string | null;
      readonly heardAgoMs: number | null;
      readonly isPlanned: boolean;
      readonly isDisturbed: boolean;
      readonly report: SceneReport['kind'] | null;
    }
  | { readonly type: 'take-out-of-service' | 'return-to-service'; readonly rule: RuleId }
  | { readonly type: 'acknowledge' | 'unshelve'; readonly nth: number }
  | { readonly type: 'shelve'; readonly nth: number; readonly forMs: number }
);

const afterMs = fc.constantFrom(0, SECOND_MS, 10 * SECOND_MS, 30 * SECOND_MS, MINUTE_MS, 6 * MINUTE_MS, 31 * MINUTE_MS);
const nth = fc.nat(7);
const observe = fc.record({
  type: fc.constant('observe' as const),
  afterMs,
  temperature: fc.option(fc.constantFrom(15, 18, 24, 27.8, 28.2, 28.8, 29.5, 31), { freq: 8 }),
  humidity: fc.option(fc.constantFrom(75, 83, 86, 90, 94, 96, 99), { freq: 8 }),
  batchId: fc.oneof({ arbitrary: fc.constant('batch-1'), weight: 20 }, fc.constantFrom('batch-2', null)),
  heardAgoMs: fc.option(fc.constantFrom(0, 14 * MINUTE_MS, 40 * MINUTE_MS), { freq: 3 }),
  isPlanned: fc.oneof({ arbitrary: fc.constant(true), weight: 15 }, fc.constant(false)),
  isDisturbed: fc.oneof({ arbitrary: fc.constant(false), weight: 3 }, fc.constant(true)),
  report: fc.option(fc.constantFrom('limp' as const, 'erect' as const, 'film-dry' as const), { freq: 1 }),
});
const service = fc.record({
  type: fc.constantFrom('take-out-of-service' as const, 'return-to-service' as const),
  afterMs,
  rule: fc.constantFrom('heat' as const, 'dry' as const, 'silent-probe' as const, 'check-failed' as const),
});
const act = fc.record({ type: fc.constantFrom('acknowledge' as const, 'unshelve' as const), afterMs, nth });
const shelve = fc.record({
  type: fc.constant('shelve' as const),
  afterMs,
  nth,
  forMs: fc.constantFrom(MINUTE_MS, 20 * MINUTE_MS),
});
const course = fc.array(fc.oneof({ arbitrary: observe, weight: 10 }, { arbitrary: act, weight: 4 }, shelve, service), {
  minLength: 1,
  maxLength: 40,
  size: 'max',
});

function eventOf(step: Step, state: ChamberWatch, nowMs: number): WatchEvent | null {
  if (step.type === 'observe') return { type: 'observe', scene: sceneOf(step, nowMs) };
  if ('rule' in step) return { type: step.type, rule: step.rule, person: 'Mo', nowMs, reason: 'being repaired' };
  const alarms = alarmsOf(state);
  const alarm = alarms[step.nth % Math.max(1, alarms.length)];
  if (alarm === undefined) return null;
  const of = { alarmId: alarm.id, person: 'Ann', nowMs };
  return step.type === 'shelve'
    ? { ...of, type: 'shelve', untilMs: nowMs + step.forMs, reason: 'being repaired' }
    : { ...of, type: step.type };
}

function sceneOf(step: Extract<Step, { type: 'observe' }>, nowMs: number) {
  const { temperature, humidity, batchId, heardAgoMs, isPlanned, isDisturbed, report } = step;
  const reports = report === null ? [] : [{ kind: report, atMs: nowMs }];
  const working = { cause: 'working', untilMs: nowMs + MINUTE_MS, person: 'Ann' } as const;
  const probes = heardAgoMs === null ? [] : [probeHeard(null, { lastHeardMs: nowMs - heardAgoMs })];
  return sceneAt(nowMs - NOON_MS, {
    batchId,
    corridor: batchId === null || !isPlanned ? null : corridor,
    climate: climateOf(temperature, humidity),
    probes,
    care: { knownSinceMs: 0, checks: [], reports, vpd: null, ventingSinceMs: null, isGapOpen: false },
    suppression: isDisturbed ? working : null,
  });
}

function alarmsOf(state: ChamberWatch): Alarm[] {
  return Object.values(state.entries).flatMap(({ alarm }) => alarm ?? []);
}

interface Played {
  readonly before: ChamberWatch;
  readonly event: WatchEvent;
  readonly state: ChamberWatch;
  readonly effects: readonly Effect[];
}

/** Plays a course; `between` may do something to the state after each event. */
function play(steps: readonly Step[], between = (state: ChamberWatch) => state): Played[] {
  const played: Played[] = [];
  let state = emptyWatch('tent-1');
  let nowMs = NOON_MS;
  for (const step of steps) {
    nowMs += step.afterMs;
    const before = state;
    const event = eventOf(step, before, nowMs);
    if (event === null) continue;
    const reduction = reduce(before, event);
    played.push({ before, event, ...reduction });
    state = between(reduction.state);
  }
  return played;
}

function changesOf(effects: readonly Effect[]): AlarmChanged[] {
  return effects.filter((effect) => effect.type === 'alarm-changed');
}

const throughJson = (state: ChamberWatch): ChamberWatch => JSON.parse(JSON.stringify(state));
const holds = (check: (steps: Step[]) => void) => fc.assert(fc.property(course, check), { numRuns: 400 });

/** Every state that one event, or leaving service and coming back, can lead to. */
function reachable(from: Alarm['state']): Set<Alarm['state']> {
  const once = lifeCycleEvents.flatMap((event) => [true, false].map((stands) => nextState(from, event, stands)));
  return new Set([from, ...once, nextState('out-of-service', 'return-to-service', false)]);
}

describe('whatever happens', () => {
  it('the courses reach every change and every state that they are meant to try', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(course, (steps) => {
        for (const { effects } of play(steps))
          for (const { change, alarm } of changesOf(effects)) seen.add(change).add(alarm.state);
      }),
      // Always the same courses: whether they reach everything must not depend on chance.
      { numRuns: 600, seed: 4 },
    );
    const changes = [
      'asked-anew',
      'occurred',
      'occurred-again',
      'escalated',
      'eased',
      'peaked',
      'acknowledged',
      'returned',
      'ended',
    ];
    const setAside = [
      ...['shelved', 'unshelved', 'suppressed', 'unsuppressed'],
      ...['out-of-service', 'taken-out-of-service', 'returned-to-service'],
    ];
    expect([...seen].sort()).toEqual(
      [...changes, ...setAside, 'normal', 'unacknowledged', 'returned-unacknowledged'].sort(),
    );
  });

  it('an alarm is in a state of the model, reached by its events', () => {
    holds((steps) => {
      for (const { effects } of play(steps))
        for (const { from, alarm } of changesOf(effects)) {
          expect(alarmStates).toContain(alarm.state);
          expect(reachable(from)).toContain(alarm.state);
        }
    });
  });

  it('no alarm in force is normal, and none lies about whether it stands', () => {
    holds((steps) => {
      for (const { state } of play(steps))
        for (const alarm of alarmsOf(state)) {
          expect(alarm.state).not.toBe('normal');
          if (alarm.state === 'returned-unacknowledged') expect(alarm.level).toBe(0);
          if (alarm.state === 'unacknowledged' || alarm.state === 'acknowledged')
            expect(alarm.level).toBeGreaterThan(0);
          expect(alarm.returnedMs === null).toBe(alarm.level > 0);
          expect(alarm.shelvedUntilMs === null).toBe(alarm.state !== 'shelved');
          if (alarm.state === 'acknowledged') expect(alarm.acknowledgedBy).toBe('Ann');
          if (alarm.state === 'unacknowledged') expect(alarm.acknowledgedBy).toBeNull();
        }
    });
  });

  it('an alarm belongs to the batch that is in the chamber', () => {
    holds((steps) => {
      for (const { event, state } of play(steps))
        if (event.type === 'observe')
          for (const alarm of alarmsOf(state)) expect(alarm.batchId).toBe(event.scene.batchId);
    });
  });

  it('nothing begins or asks anew in a rule that is suppressed or out of service', () => {
    holds((steps) => {
      for (const { before, event, effects } of play(steps))
        for (const { change, alarm } of changesOf(effects)) {
          const { isSuppressible } = ruleOf(alarm.rule);
          const isDisturbed = event.type === 'observe' && event.scene.suppression !== null && isSuppressible === true;
          const isOut = event.type === 'observe' && outOfServiceOf(before, alarm.rule) !== null;
          if (isDisturbed || isOut) expect([change, alarm.state]).not.toEqual([change, 'unacknowledged']);
        }
    });
  });

  it('an alarm is out of service exactly while its rule is, and suppressed only where the rule may be', () => {
    holds((steps) => {
      for (const { state } of play(steps))
        for (const alarm of alarmsOf(state)) {
          expect(alarm.state === 'out-of-service').toBe(outOfServiceOf(state, alarm.rule) !== null);
          if (alarm.state === 'suppressed') expect(ruleOf(alarm.rule).isSuppressible).toBe(true);
        }
    });
  });

  it('a change is a change: of the state, the level or the peak', () => {
    holds((steps) => {
      for (const { before, effects } of play(steps)) {
        const known = new Map(alarmsOf(before).map((alarm) => [alarm.id, alarm]));
        for (const { from, alarm } of changesOf(effects)) {
          const was = known.get(alarm.id);
          expect(from).toBe(was?.state ?? 'normal');
          expect(from !== alarm.state || was?.level !== alarm.level || was.peak !== alarm.peak).toBe(true);
          known.set(alarm.id, alarm);
        }
      }
    });
  });

  it('the peak of an alarm never gets better, and no value of it is worse', () => {
    holds((steps) => {
      const peaks = new Map<string, number>();
      for (const { effects } of play(steps))
        for (const { alarm } of changesOf(effects)) {
          const worse = alarm.rule === 'cold' || alarm.rule === 'dry' ? -1 : 1;
          if (alarm.peak === null) continue;
          expect(worse * (alarm.peak - (peaks.get(alarm.id) ?? alarm.peak))).toBeGreaterThanOrEqual(0);
          if (alarm.level > 0) expect(worse * (alarm.peak - (alarm.value ?? alarm.peak))).toBeGreaterThanOrEqual(0);
          peaks.set(alarm.id, alarm.peak);
        }
    });
  });

  it('its times are in order', () => {
    holds((steps) => {
      for (const { event, effects } of play(steps)) {
        const nowMs = event.type === 'observe' ? event.scene.nowMs : event.nowMs;
        for (const { atMs, alarm } of changesOf(effects)) {
          expect(atMs).toBe(nowMs);
          expect(alarm.occurredMs).toBeLessThanOrEqual(nowMs);
          expect(alarm.sinceMs).toBeLessThanOrEqual(alarm.returnedMs ?? nowMs);
        }
      }
    });
  });
});

describe('a kill at any instant', () => {
  it('changes nothing: written as JSON and read again after each event, the watch goes on as if it had not stopped', () => {
    holds((steps) => {
      expect(play(steps, throughJson)).toEqual(play(steps));
    });
  });

  it('leaves what was stored entry by entry equal to what was in memory', () => {
    holds((steps) => {
      const stored: Record<string, unknown> = {};
      let state = emptyWatch('tent-1');
      for (const played of play(steps)) {
        for (const effect of played.effects) if (effect.type === 'entry-changed') stored[effect.key] = effect.entry;
        state = played.state;
      }
      expect(stored).toEqual(state.entries);
    });
  });
});

describe('the same event twice', () => {
  it('changes nothing the second time, and an act says why', () => {
    holds((steps) => {
      for (const { event, state } of play(steps)) {
        const again = reduce(state, event);
        expect(again.state).toEqual(state);
        expect(again.effects.map(({ type }) => type)).toEqual(event.type === 'observe' ? [] : ['nothing']);
      }
    });
  });
});
