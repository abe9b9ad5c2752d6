// The replay of a series: alarms at the instants at which the live watch would have given them, exposure, quality, forecast.
import { describe, expect, it } from 'vitest';
import { reduce } from '../../../shared/alarms/reduce.ts';
import { emptyWatch } from '../../../shared/alarms/watch-state.ts';
import { dailyExposure } from '../../../shared/exposure/daily-exposure.ts';
import type { ClimateSample } from '../../../shared/exposure/day-figures.ts';
import { standardProfiles } from '../../../shared/healing/standard-profiles.ts';
import { createSeriesReplay } from '../../../shared/replay/replay-series.ts';
import { HOUR_MS, MINUTE_MS, SECOND_MS, utcText } from '../../../shared/units.ts';
import { CLOSED_MS, document, everyMinute, minute, peak, replay, setup, steady } from './sample-series.ts';

const hot = everyMinute(peak(600, 29.4, 20));

describe('alarms', () => {
  it('come a delay after the limit is passed, go a delay after it is left, and name their peak', () => {
    const { alarms } = replay(hot);
    const heat = alarms.filter(({ rule }) => rule === 'heat');
    const passed = hot.find(({ temperature }) => (temperature ?? 0) > 28)?.timeMs ?? 0;
    const left = hot.findLast(({ temperature }) => (temperature ?? 0) > 27.5)?.timeMs ?? 0;
    expect(heat).toEqual([
      {
        rule: 'heat',
        priority: 'critical',
        occurredAt: utcText(passed + MINUTE_MS),
        returnedAt: utcText(left + 2 * MINUTE_MS),
        peak: 29.4,
      },
    ]);
  });

  it('were foretold: the warning comes before the heat, and leaves to it', () => {
    const { alarms, ahead } = replay(hot);
    const [warning, heat] = alarms;
    expect([warning?.rule, heat?.rule]).toEqual(['heat-ahead', 'heat']);
    expect(Date.parse(warning?.occurredAt ?? '')).toBeLessThan(Date.parse(heat?.occurredAt ?? ''));
    expect(Date.parse(warning?.returnedAt ?? '') - Date.parse(heat?.occurredAt ?? '')).toBe(5 * SECOND_MS);
    expect(ahead).toMatchObject({ warnings: 1, crossings: 1, caught: 1, falsePerWeek: 0 });
    expect(ahead.medianLeadMinutes).toBeGreaterThan(3);
  });

  it('are one for each time, though nobody acknowledged them', () => {
    const twice = everyMinute((i) => Math.max(peak(300, 28.6, 10)(i), peak(700, 28.4, 10)(i)));
    const peaks = replay(twice).alarms.filter(({ rule }) => rule === 'heat');
    expect(peaks.map((one) => one.peak)).toEqual([28.6, 28.4]);
  });

  it('of silence come when the silence has lasted, by themselves, and end with the next reading', () => {
    const gap = everyMinute(steady).filter(({ timeMs }) => timeMs <= minute(400) || timeMs >= minute(500));
    const { alarms } = replay(gap);
    const [chamber, probe] = [
      alarms.find(({ rule }) => rule === 'silent-chamber'),
      alarms.find(({ rule }) => rule === 'silent-probe'),
    ];
    expect(probe).toEqual({
      rule: 'silent-probe',
      priority: 'low',
      occurredAt: utcText(minute(415) + 5 * SECOND_MS),
      returnedAt: utcText(minute(500)),
      peak: null,
    });
    expect(chamber).toMatchObject({
      priority: 'critical',
      occurredAt: utcText(minute(416) + 5 * SECOND_MS),
      returnedAt: utcText(minute(500)),
    });
  });

  it('that still stand at the end have no return', () => {
    const { alarms } = replay(
      everyMinute(
        () => null,
        (i) => (i < 1000 ? 95 : 80) + Math.sin(i / 5),
      ),
    );
    expect(alarms.find(({ rule }) => rule === 'dry')).toMatchObject({
      occurredAt: utcText(minute(1005)),
      returnedAt: null,
    });
  });

  it('do not come before the chamber was closed', () => {
    expect(replay(hot, { closedMs: minute(1300) }).alarms).toEqual([]);
  });

  it('come past the end of the plan by its last limits: nobody has finished the batch', () => {
    const short = { ...document, endsAfterHours: 4 };
    expect(replay(hot, { document: short }).alarms.map(({ rule }) => rule)).toContain('heat');
  });

  it('are those of a plain loop over reducer and rounds', () => {
    const wild = everyMinute(
      (i) => 26 + 2.6 * Math.sin(i / 40) + 0.8 * Math.sin(i / 3),
      (i) => 88 + 5 * Math.cos(i / 25),
    ).filter((_, i) => i % 97 > 18);
    const changes = plainLoop(wild);
    const rows = replay(wild).alarms.filter(({ rule }) => rule !== 'heat-ahead' && rule !== 'suspect-probe');
    expect(rows.length).toBeGreaterThan(10);
    expect(rows.map(({ rule, occurredAt }) => `${rule} ${occurredAt}`)).toEqual(changes);
  });
});

/** Every occurrence, by judging readings and a round each five seconds with nothing left out. */
function plainLoop(samples: readonly ClimateSample[]): string[] {
  const found: string[] = [];
  const limits = {
    temperature: { lowLow: null, low: 18, high: 28, highHigh: 29 },
    humidity: { lowLow: null, low: 85, high: 100, highHigh: null },
  };
  let watch = emptyWatch('c');
  samples.forEach((sample, i) => {
    const nextMs = samples[i + 1]?.timeMs ?? sample.timeMs + 1;
    for (let nowMs = sample.timeMs; nowMs < nextMs; nowMs += 5 * SECOND_MS) {
      const isFresh = nowMs - sample.timeMs <= 15 * MINUTE_MS;
      const [warmth, moisture] = [isFresh ? sample.temperature : null, isFresh ? sample.humidity : null];
      const both = {
        temperature: warmth,
        hottest: warmth,
        coldest: warmth,
        humidity: moisture,
        driest: moisture,
        wettest: moisture,
      };
      const climate = {
        ...both,
        timeMs: sample.timeMs,
        vpdKpa: null,
        dewPoint: null,
        healthyProbes: 1,
        canopyProbes: 1,
      };
      const probe = {
        probeId: 'p',
        place: 'canopy',
        lastHeardMs: sample.timeMs,
        watchedSinceMs: CLOSED_MS,
        silenceMs: 15 * MINUTE_MS,
      } as const;
      const scene = { nowMs, chamberId: 'c', batchId: 'b', corridor: limits, climate, probes: [probe] };
      const { state, effects } = reduce(watch, { type: 'observe', scene });
      watch = state;
      for (const effect of effects) {
        if (effect.type !== 'alarm-changed') continue;
        if (effect.change === 'occurred') found.push(`${effect.alarm.rule} ${utcText(effect.atMs)}`);
        if (effect.alarm.state !== 'unacknowledged') continue;
        watch = reduce(watch, { type: 'acknowledge', alarmId: effect.alarm.id, person: 'p', nowMs }).state;
      }
    }
  });
  return found;
}

describe('days', () => {
  it('are the exposure of the good readings', () => {
    const { days } = replay(hot);
    const [expected] = dailyExposure(hot, { closedMs: CLOSED_MS, silenceMs: 15 * MINUTE_MS });
    expect(days).toHaveLength(1);
    expect(days[0]?.minutesAbove['28']).toBeCloseTo(expected?.minutesAbove['28'] ?? -1, 5);
    expect(days[0]?.degreeHoursAbove['28']).toBeCloseTo(expected?.degreeHoursAbove['28'] ?? -1, 5);
    expect(days[0]?.temperature.mean).toBeCloseTo(expected?.temperature.mean ?? -1, 5);
    expect(days[0]).toMatchObject({ day: 1, from: utcText(CLOSED_MS), to: utcText(CLOSED_MS + 24 * HOUR_MS) });
  });

  it('leave out a spike, which only the reading after it tells, and join its neighbours', () => {
    const spiked = everyMinute((i) => (i === 700 ? 45 : steady(i)));
    const { days, quality } = replay(spiked);
    expect(days[0]?.temperature.max).toBeLessThan(24);
    expect(quality).toEqual({ pass: spiked.length - 1, suspect: 0, fail: 1, missing: 0 });
  });

  it('do not bridge a silence, and say how much of the day is unknown', () => {
    const gap = everyMinute(steady).filter(({ timeMs }) => timeMs <= minute(400) || timeMs >= minute(500));
    expect(replay(gap).days[0]?.unknownHours).toBeCloseTo((100 + 1) / 60, 5);
    expect(replay(gap, { silenceMs: 100 * MINUTE_MS }).days[0]?.unknownHours).toBeCloseTo(1 / 60, 5);
  });
});

describe('quality', () => {
  it('counts readings by the worse of their halves, and rows in which nothing could be read', () => {
    const series = createSeriesReplay(setup);
    const odd = new Map<number, Partial<ClimateSample>>([
      [100, { temperature: 99 }],
      [200, { humidity: null }],
      [300, { temperature: null }],
      [400, { humidity: 104 }],
      [500, { humidity: null, temperature: 99 }],
    ]);
    for (const [i, sample] of everyMinute(steady).entries()) series.add({ ...sample, ...odd.get(i) });
    series.miss();
    series.miss();
    expect(series.result().quality).toEqual({ pass: 1440 - 5, suspect: 1, fail: 2, missing: 2 + 2 });
  });

  it('of nothing is nothing', () => {
    const series = createSeriesReplay(setup);
    series.miss();
    expect(series.result()).toEqual({
      alarms: [],
      days: [],
      quality: { pass: 0, suspect: 0, fail: 0, missing: 1 },
      ahead: { warnings: 0, crossings: 0, caught: 0, medianLeadMinutes: null, falsePerWeek: 0 },
    });
  });
});

describe('the result', () => {
  const wild = everyMinute(
    (i) => 26 + 2.6 * Math.sin(i / 40) + 0.8 * Math.sin(i / 3),
    (i) => 88 + 5 * Math.cos(i / 25),
  );

  it.each(standardProfiles.map((profile) => [profile.id, profile.document] as const))(
    'is the same to the last byte (%s)',
    (_, plan) => {
      const once = () => JSON.stringify(replay(wild, { document: plan, zone: 'Europe/Amsterdam' }));
      expect(once()).toBe(once());
    },
  );

  it('does not depend on what else was replayed beside it', () => {
    const alone = JSON.stringify(replay(wild));
    const [one, other] = [createSeriesReplay(setup), createSeriesReplay(setup)];
    for (const sample of wild) {
      one.add(sample);
      other.add({ ...sample, temperature: (sample.temperature ?? 0) + 1, timeMs: sample.timeMs + 777 });
    }
    expect(JSON.stringify(one.result())).toBe(alone);
  });

  it('has the shape of the contract', () => {
    const { alarms, days, quality, ahead } = replay(hot);
    expect(Object.keys(alarms[0] ?? {})).toEqual(['rule', 'priority', 'occurredAt', 'returnedAt', 'peak']);
    expect(Object.keys(days[0] ?? {})).toEqual([
      'day',
      'from',
      'to',
      'temperature',
      'humidity',
      'minutesAbove',
      'degreeHoursAbove',
      'unknownHours',
    ]);
    expect(Object.keys(quality)).toEqual(['pass', 'suspect', 'fail', 'missing']);
    expect(Object.keys(ahead)).toEqual(['warnings', 'crossings', 'caught', 'medianLeadMinutes', 'falsePerWeek']);
  });
});
