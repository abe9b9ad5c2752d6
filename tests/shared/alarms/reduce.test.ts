// The life of alarms in a tent, told as it would happen: heat rises, somebody acts, it passes.
import { describe, expect, it } from 'vitest';
import { reduce } from '../../../shared/alarms/reduce.ts';
import { emptyWatch } from '../../../shared/alarms/watch-state.ts';
import { HOUR_MS, MINUTE_MS, SECOND_MS } from '../../../shared/units.ts';
import { acknowledge, runHotWatch, runWatch, told } from './run-watch.ts';
import { climateOf, corridor, NOON_MS, probeHeard, sceneAt } from './scenes.ts';

const warm = (temperature: number) => ({ climate: climateOf(temperature, 90) });

describe('an alarm occurs', () => {
  it('after the on-delay, and not a moment sooner', () => {
    const watch = runWatch();
    watch.see(0, warm(28.5));
    expect(watch.see(MINUTE_MS - 1, warm(28.5))).toEqual([]);
    expect(watch.alarm('heat')).toBeNull();
    expect(told(watch.see(MINUTE_MS, warm(28.5)))).toEqual(['heat occurred: normal → unacknowledged']);
  });

  it('and says what, how far and since when', () => {
    const { hot } = runHotWatch();
    expect(hot).toEqual({
      id: `tent-1.heat.${(NOON_MS + MINUTE_MS).toString(36)}`,
      chamberId: 'tent-1',
      batchId: 'batch-1',
      rule: 'heat',
      probeId: null,
      state: 'unacknowledged',
      level: 1,
      priority: 'high',
      sinceMs: NOON_MS,
      occurredMs: NOON_MS + MINUTE_MS,
      limit: 28,
      value: 28.5,
      peak: 28.5,
      peakMs: NOON_MS,
      asking: { sinceMs: NOON_MS + MINUTE_MS, kind: 'raised' },
      acknowledgedMs: null,
      acknowledgedBy: null,
      returnedMs: null,
      shelvedUntilMs: null,
      shelvedReason: null,
    });
  });

  it('at the outer level after half a minute, critical from the start', () => {
    const watch = runWatch();
    expect(watch.heat(30, 0, 20 * SECOND_MS)).toEqual([]);
    watch.heat(30, 30 * SECOND_MS, 30 * SECOND_MS);
    expect(watch.alarm('heat')).toMatchObject({ level: 2, priority: 'critical', limit: 29, sinceMs: NOON_MS });
    expect(watch.heat(30, 40 * SECOND_MS, 2 * MINUTE_MS)).toEqual([]);
  });

  it('naming the limit of the level that stands, though the value is beyond the outer limit already', () => {
    const watch = runWatch();
    watch.heat(28.5, 0, 50 * SECOND_MS);
    watch.see(MINUTE_MS, warm(29.5));
    expect(watch.alarm('heat')).toMatchObject({ level: 1, priority: 'high', limit: 28, value: 29.5 });
    watch.heat(28.6, 70 * SECOND_MS, 5 * MINUTE_MS);
    expect(watch.alarm('heat')).toMatchObject({ level: 1, priority: 'high', limit: 28 });
  });

  it('with the worst value since the condition began, also of the time before it was told', () => {
    const watch = runWatch();
    watch.see(0, warm(28.2));
    watch.see(20 * SECOND_MS, warm(29));
    watch.see(40 * SECOND_MS, warm(28.6));
    watch.see(MINUTE_MS, warm(28.3));
    expect(watch.alarm('heat')).toMatchObject({ value: 28.3, peak: 29, peakMs: NOON_MS + 20 * SECOND_MS });
  });

  it('but not with a value of an earlier time that had passed before it was told', () => {
    const watch = runWatch();
    watch.see(0, warm(28.9));
    watch.see(30 * SECOND_MS, warm(27));
    watch.heat(28.1, 40 * SECOND_MS, 100 * SECOND_MS);
    expect(watch.alarm('heat')).toMatchObject({ sinceMs: NOON_MS + 40 * SECOND_MS, peak: 28.1 });
  });

  it('for each rule by itself', () => {
    const watch = runWatch();
    const cookedAndDry = { climate: climateOf(28.5, 84) };
    watch.see(0, cookedAndDry);
    expect(told(watch.see(5 * MINUTE_MS, cookedAndDry))).toEqual([
      'heat occurred: normal → unacknowledged',
      'dry occurred: normal → unacknowledged',
    ]);
  });
});

describe('while it stands', () => {
  it('a new worst value is its peak; the limit, priority and beginning stay', () => {
    const watch = runHotWatch();
    const [change, ...more] = watch.see(2 * MINUTE_MS, warm(28.9));
    expect(more).toEqual([]);
    expect(change).toMatchObject({
      change: 'peaked',
      from: 'unacknowledged',
      person: null,
      atMs: NOON_MS + 2 * MINUTE_MS,
    });
    expect(change?.alarm).toEqual({ ...watch.hot, value: 28.9, peak: 28.9, peakMs: NOON_MS + 2 * MINUTE_MS });
  });

  it('a value that is no worse changes nothing', () => {
    const watch = runHotWatch();
    const before = watch.state();
    expect(reduce(before, { type: 'observe', scene: sceneAt(2 * MINUTE_MS, warm(28.5)) }).effects).toEqual([]);
    expect(reduce(before, { type: 'observe', scene: sceneAt(2 * MINUTE_MS, warm(27.6)) }).effects).toEqual([]);
  });

  it('the worst of dryness is the driest', () => {
    const watch = runWatch();
    for (const [minute, humidity] of [84, 83, 82, 83, 84, 84].entries())
      watch.see(minute * MINUTE_MS, { climate: climateOf(24, humidity) });
    expect(watch.alarm('dry')).toMatchObject({ peak: 82, peakMs: NOON_MS + 2 * MINUTE_MS, value: 84, limit: 85 });
  });

  it('a probe that falls silent neither clears it nor lets it grow', () => {
    const watch = runHotWatch();
    const blind = { climate: climateOf(null, null) };
    expect(told(watch.see(2 * MINUTE_MS, blind))).toEqual([]);
    expect(told(watch.see(30 * MINUTE_MS, blind))).toEqual(['silent-chamber occurred: normal → unacknowledged']);
    expect(watch.alarm('heat')).toEqual(watch.hot);
  });
});

describe('it escalates, eases and returns', () => {
  const worse = () => {
    const watch = runHotWatch();
    watch.take(acknowledge(watch.hot, 90 * SECOND_MS));
    return { watch, changes: watch.heat(30, 2 * MINUTE_MS, 3 * MINUTE_MS) };
  };

  it('what was acknowledged and got worse is acknowledged by nobody', () => {
    const { watch, changes } = worse();
    expect(told(changes)).toEqual([
      'heat peaked: acknowledged → acknowledged',
      'heat escalated: acknowledged → unacknowledged',
    ]);
    const nobody = { acknowledgedMs: null, acknowledgedBy: null };
    const atOuter = { level: 2, priority: 'critical', limit: 29, value: 30, peak: 30, sinceMs: NOON_MS } as const;
    expect(watch.alarm('heat')).toMatchObject({ ...nobody, ...atOuter, peakMs: NOON_MS + 2 * MINUTE_MS });
  });

  it('an unacknowledged alarm that gets worse is told as worse and stays as it is', () => {
    const watch = runHotWatch();
    const changes = watch.heat(30, 2 * MINUTE_MS, 3 * MINUTE_MS).filter(({ change }) => change === 'escalated');
    expect(told(changes)).toEqual(['heat escalated: unacknowledged → unacknowledged']);
  });

  it('eased, it has the inner limit again, keeps the highest priority it had, and stays with who has it', () => {
    const { watch } = worse();
    watch.take(acknowledge(watch.hot, 200 * SECOND_MS, 'Bea'));
    expect(told(watch.heat(28.4, 4 * MINUTE_MS, 5 * MINUTE_MS))).toEqual(['heat eased: acknowledged → acknowledged']);
    const inner = { level: 1, limit: 28, value: 28.4, peak: 30, priority: 'critical', acknowledgedBy: 'Bea' } as const;
    expect(watch.alarm('heat')).toMatchObject(inner);
  });

  it('back in order it keeps limit, priority, peak and beginning, and says when it was over', () => {
    const { watch } = worse();
    watch.heat(28.4, 4 * MINUTE_MS, 5 * MINUTE_MS);
    expect(told(watch.heat(26, 6 * MINUTE_MS, 7 * MINUTE_MS))).toEqual([
      'heat returned: unacknowledged → returned-unacknowledged',
    ]);
    const over = { level: 0, returnedMs: NOON_MS + 7 * MINUTE_MS, value: 26, sinceMs: NOON_MS } as const;
    expect(watch.alarm('heat')).toMatchObject({ ...over, limit: 28, priority: 'critical', peak: 30 });
  });

  it('from the outer level straight to order it returns once', () => {
    const { watch } = worse();
    expect(told(watch.heat(26, 4 * MINUTE_MS, 6 * MINUTE_MS))).toEqual([
      'heat returned: unacknowledged → returned-unacknowledged',
    ]);
    expect(watch.alarm('heat')).toMatchObject({ level: 0, limit: 29, peak: 30 });
  });

  it('from the outer level, which stood first, into the deadband of the inner limit it is eased and not over', () => {
    const watch = runWatch();
    watch.heat(30, 0, 30 * SECOND_MS);
    expect(told(watch.heat(27.8, 40 * SECOND_MS, 10 * MINUTE_MS))).toEqual([
      'heat eased: unacknowledged → unacknowledged',
    ]);
    expect(watch.alarm('heat')).toMatchObject({ level: 1, limit: 28, sinceMs: NOON_MS });
  });

  it('an acknowledged alarm that returns is over', () => {
    const watch = runHotWatch();
    watch.take(acknowledge(watch.hot, 90 * SECOND_MS));
    const changes = watch.heat(26, 2 * MINUTE_MS, 3 * MINUTE_MS);
    expect(told(changes)).toEqual(['heat returned: acknowledged → normal']);
    expect(changes[0]?.alarm).toMatchObject({ id: watch.hot.id, acknowledgedBy: 'Ann', level: 0 });
    expect(watch.alarm('heat')).toBeNull();
  });

  it('not before the off-delay has passed', () => {
    const watch = runHotWatch();
    watch.see(2 * MINUTE_MS, warm(26));
    expect(watch.see(3 * MINUTE_MS - 1, warm(26))).toEqual([]);
    expect(told(watch.see(3 * MINUTE_MS, warm(26)))).toEqual([
      'heat returned: unacknowledged → returned-unacknowledged',
    ]);
  });
});

describe('it comes again before anybody has acknowledged it', () => {
  const again = () => {
    const watch = runHotWatch();
    watch.heat(29, 2 * MINUTE_MS, 2 * MINUTE_MS);
    watch.heat(26, 3 * MINUTE_MS, 4 * MINUTE_MS);
    return { watch, changes: watch.heat(28.2, HOUR_MS, HOUR_MS + MINUTE_MS) };
  };

  it('as the same alarm, unacknowledged again', () => {
    const { watch, changes } = again();
    expect(told(changes)).toEqual(['heat occurred-again: returned-unacknowledged → unacknowledged']);
    expect(watch.alarm('heat')).toMatchObject({ id: watch.hot.id, occurredMs: watch.hot.occurredMs });
  });

  it('counting its time from now on: nobody is told that it was hot for the calm hour between', () => {
    const { watch } = again();
    expect(watch.alarm('heat')).toMatchObject({ sinceMs: NOON_MS + HOUR_MS, returnedMs: null, value: 28.2 });
  });

  it('keeping the worst of the whole occurrence as its peak', () => {
    const { watch } = again();
    expect(watch.alarm('heat')).toMatchObject({ peak: 29, peakMs: NOON_MS + 2 * MINUTE_MS });
  });

  it('and after it was acknowledged as another alarm', () => {
    const watch = runHotWatch();
    watch.take(acknowledge(watch.hot, 90 * SECOND_MS));
    watch.heat(26, 2 * MINUTE_MS, 3 * MINUTE_MS);
    watch.heat(28.2, HOUR_MS, HOUR_MS + MINUTE_MS);
    expect(watch.alarm('heat')?.id).not.toBe(watch.hot.id);
    expect(watch.alarm('heat')).toMatchObject({ acknowledgedBy: null, peak: 28.2, sinceMs: NOON_MS + HOUR_MS });
  });
});

describe('a chamber that nobody measures', () => {
  const blind = { climate: climateOf(null, null) };

  it('is told after a minute, as critical after half an hour, and is over with the first reading', () => {
    const watch = runWatch();
    watch.see(0, blind);
    expect(watch.see(MINUTE_MS - 1, blind)).toEqual([]);
    expect(told(watch.see(MINUTE_MS, blind))).toEqual(['silent-chamber occurred: normal → unacknowledged']);
    expect(watch.alarm('silent-chamber')).toMatchObject({ level: 1, priority: 'high', value: null, peak: null });
    watch.take(acknowledge(watch.alarm('silent-chamber') ?? expect.fail(), 2 * MINUTE_MS));
    expect(watch.see(30 * MINUTE_MS - 1, blind)).toEqual([]);
    expect(told(watch.see(30 * MINUTE_MS, blind))).toEqual(['silent-chamber escalated: acknowledged → unacknowledged']);
    expect(watch.alarm('silent-chamber')).toMatchObject({ level: 2, priority: 'critical', sinceMs: NOON_MS });
    expect(told(watch.see(31 * MINUTE_MS))).toEqual([
      'silent-chamber returned: unacknowledged → returned-unacknowledged',
    ]);
  });
});

describe('the probes of a chamber', () => {
  const silent = [probeHeard(60 * MINUTE_MS, { probeId: 'p2' })];

  it('each have an alarm of their own', () => {
    const watch = runWatch();
    const probes = [probeHeard(60 * MINUTE_MS), probeHeard(0, { probeId: 'p2' })];
    expect(told(watch.see(0, { probes }))).toEqual(['silent-probe occurred: normal → unacknowledged']);
    expect(watch.alarm('silent-probe', 'p1')).toMatchObject({ probeId: 'p1', limit: 15, sinceMs: NOON_MS - HOUR_MS });
    expect(watch.alarm('silent-probe', 'p2')).toBeNull();
  });

  it('take their alarm with them when they are taken away', () => {
    const watch = runWatch();
    watch.see(0, { probes: silent });
    expect(told(watch.see(MINUTE_MS, { probes: [] }))).toEqual([
      'silent-probe returned: unacknowledged → returned-unacknowledged',
    ]);
    expect(watch.see(2 * MINUTE_MS, { probes: [] })).toEqual([]);
  });

  it('come back into it while nobody has acknowledged that', () => {
    const watch = runWatch();
    watch.see(0, { probes: silent });
    watch.see(MINUTE_MS, { probes: [] });
    expect(told(watch.see(2 * MINUTE_MS, { probes: silent }))).toEqual([
      'silent-probe occurred-again: returned-unacknowledged → unacknowledged',
    ]);
  });
});

describe('a batch that leaves', () => {
  const empty = { batchId: null, corridor: null, ...warm(30) };

  it('takes an alarm that stands with it, at once and whoever has not acknowledged it', () => {
    const watch = runHotWatch();
    const changes = watch.see(2 * MINUTE_MS, empty);
    expect(told(changes)).toEqual(['heat returned: unacknowledged → normal']);
    const over = { level: 0, returnedMs: NOON_MS + 2 * MINUTE_MS, acknowledgedBy: null, peak: 28.5 } as const;
    expect(changes[0]).toMatchObject({ note: 'the batch is over', person: null, alarm: over });
    expect(watch.alarm('heat')).toBeNull();
  });

  it('takes one with it that had returned, without telling that it is over a second time', () => {
    const watch = runHotWatch();
    watch.heat(26, 2 * MINUTE_MS, 3 * MINUTE_MS);
    const changes = watch.see(HOUR_MS, empty);
    expect(told(changes)).toEqual(['heat ended: returned-unacknowledged → normal']);
    expect(changes[0]?.alarm.returnedMs).toBe(NOON_MS + 3 * MINUTE_MS);
  });

  it('leaves nothing to the next batch: the same heat is a new alarm, after its full delay', () => {
    const watch = runHotWatch();
    watch.see(2 * MINUTE_MS, empty);
    const next = { batchId: 'batch-2', ...warm(28.5) };
    expect(watch.see(3 * MINUTE_MS, next)).toEqual([]);
    expect(watch.see(4 * MINUTE_MS - 1, next)).toEqual([]);
    expect(told(watch.see(4 * MINUTE_MS, next))).toEqual(['heat occurred: normal → unacknowledged']);
    expect(watch.alarm('heat')).toMatchObject({ batchId: 'batch-2', peak: 28.5, sinceMs: NOON_MS + 3 * MINUTE_MS });
  });

  it('and so it is when another takes its place in the same moment', () => {
    const watch = runHotWatch();
    const next = { batchId: 'batch-2', ...warm(28.5) };
    expect(told(watch.see(2 * MINUTE_MS, next))).toEqual(['heat returned: unacknowledged → normal']);
    expect(told(watch.see(3 * MINUTE_MS, next))).toEqual(['heat occurred: normal → unacknowledged']);
    expect(watch.alarm('heat')?.batchId).toBe('batch-2');
  });
});

describe('a plan that says nothing of an hour', () => {
  it('lets an alarm of its limits return after the off-delay: there is no limit to be beyond', () => {
    const watch = runHotWatch();
    const unplanned = { corridor: null, ...warm(30) };
    watch.see(2 * MINUTE_MS, unplanned);
    expect(told(watch.see(3 * MINUTE_MS, unplanned))).toEqual([
      'heat returned: unacknowledged → returned-unacknowledged',
    ]);
    expect(watch.alarm('heat')).toMatchObject({ limit: 28, value: 28.5, peak: 28.5 });
  });

  it('a corridor that moves makes the limit of the next step', () => {
    const watch = runHotWatch();
    const cooler = { ...corridor, temperature: { ...corridor.temperature, high: 26, highHigh: 27 } };
    for (let atMs = 2 * MINUTE_MS; atMs <= 3 * MINUTE_MS; atMs += 10 * SECOND_MS)
      watch.see(atMs, { corridor: cooler, ...warm(28.5) });
    expect(watch.alarm('heat')).toMatchObject({ level: 2, limit: 27, priority: 'critical' });
  });
});

describe('a calm chamber', () => {
  it('remembers nothing and tells nothing', () => {
    const { state, effects } = reduce(emptyWatch('tent-1'), { type: 'observe', scene: sceneAt(0) });
    expect(effects).toEqual([]);
    expect(state).toEqual(emptyWatch('tent-1'));
  });
});
