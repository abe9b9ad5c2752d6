// Silence of a probe and of a whole chamber: both sides of the allowed time, and what is no silence at all.
import { describe, expect, it } from 'vitest';
import { silentChamber } from '../../../../shared/alarms/rules/silent-chamber.ts';
import { silentProbe } from '../../../../shared/alarms/rules/silent-probe.ts';
import { MINUTE_MS } from '../../../../shared/units.ts';
import { climateOf, NOON_MS, probeHeard, sceneAt } from '../scenes.ts';

const calm = () => 0 as const;

describe('a silent probe', () => {
  it.each([
    { why: 'heard just now', probe: probeHeard(0), level: 0 },
    { why: 'exactly as long ago as it may be silent', probe: probeHeard(15 * MINUTE_MS), level: 0 },
    { why: 'a millisecond longer', probe: probeHeard(15 * MINUTE_MS + 1), level: 1 },
    { why: 'longer, but this one may be', probe: probeHeard(20 * MINUTE_MS, { silenceMs: 20 * MINUTE_MS }), level: 0 },
    {
      why: 'never heard, and placed as long ago as it may be silent',
      probe: probeHeard(null, { watchedSinceMs: NOON_MS - 15 * MINUTE_MS }),
      level: 0,
    },
    {
      why: 'never heard, and placed longer ago',
      probe: probeHeard(null, { watchedSinceMs: NOON_MS - 15 * MINUTE_MS - 1 }),
      level: 1,
    },
    {
      why: 'heard long ago, but watched again only since the service started',
      probe: probeHeard(60 * MINUTE_MS, { watchedSinceMs: NOON_MS - MINUTE_MS }),
      level: 0,
    },
    { why: 'dated a little ahead by a fast clock', probe: probeHeard(-3 * MINUTE_MS), level: 0 },
  ])('$why: level $level', ({ probe, level }) => {
    expect(silentProbe.judge(sceneAt(0, { probes: [probe] }), calm)).toMatchObject([{ probeId: 'p1', level }]);
  });

  it('is nobody’s concern in an empty chamber', () => {
    const scene = sceneAt(0, { batchId: null, probes: [probeHeard(60 * MINUTE_MS)] });
    expect(silentProbe.judge(scene, calm)[0]?.level).toBe(0);
  });

  it('is judged for each probe by itself, film probes too', () => {
    const probes = [probeHeard(0), probeHeard(60 * MINUTE_MS, { probeId: 'p2', place: 'film' })];
    expect(silentProbe.judge(sceneAt(0, { probes }), calm).map(({ probeId, level }) => [probeId, level])).toEqual([
      ['p1', 0],
      ['p2', 1],
    ]);
  });

  it('began when it was last heard, and its limit is the silence it is allowed, in minutes', () => {
    const [judgement] = silentProbe.judge(sceneAt(0, { probes: [probeHeard(16 * MINUTE_MS)] }), calm);
    expect(judgement).toMatchObject({ sinceMs: NOON_MS - 16 * MINUTE_MS, limits: [15, null], value: null });
  });

  it('is low, at once: the allowed silence is its delay', () => {
    expect(silentProbe).toMatchObject({ onDelayMs: [0, 0], offDelayMs: 0, priority: ['low', 'low'] });
  });
});

describe('a silent chamber', () => {
  it.each([
    { why: 'a temperature is known', change: {}, level: 0 },
    { why: 'nobody measures', change: { climate: climateOf(null, null) }, level: 2 },
    { why: 'a humidity alone does not say how hot it is', change: { climate: climateOf(null, 90) }, level: 2 },
    { why: 'a temperature alone is enough', change: { climate: climateOf(24, null) }, level: 0 },
    { why: 'nothing is in it', change: { climate: climateOf(null, null), batchId: null }, level: 0 },
    {
      why: 'a batch past its limits is in it still',
      change: { climate: climateOf(null, null), corridor: null },
      level: 2,
    },
  ])('$why: level $level', ({ change, level }) => {
    expect(silentChamber.judge(sceneAt(0, change), calm)).toMatchObject([{ probeId: null, level }]);
  });

  it('is high after a minute and critical after half an hour, and over with the first reading', () => {
    const { onDelayMs, offDelayMs, priority } = silentChamber;
    expect({ onDelayMs, offDelayMs, priority }).toEqual({
      onDelayMs: [MINUTE_MS, 30 * MINUTE_MS],
      offDelayMs: 0,
      priority: ['high', 'critical'],
    });
  });
});
