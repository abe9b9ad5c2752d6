import { describe, expect, test } from 'vitest';
import { MINUTE_MS } from '../../../shared/units.ts';
import { type AirPoint, joinSameProbes, type ProbeTrack } from '../../../shared/venting/same-probes.ts';

const silenceMs = 15 * MINUTE_MS;

const humidityAt = (timeMs: number) => 80 + timeMs / MINUTE_MS / 10;

/** A probe read each minute from `from` to `to` in air whose humidity rises by a tenth a minute, `offset` too high. */
function track(from: number, to: number, offset: number, shiftMs = 0): ProbeTrack {
  const points: AirPoint[] = [];
  for (let minute = from; minute <= to; minute++) {
    const timeMs = minute * MINUTE_MS + shiftMs;
    points.push({ timeMs, temperature: 21 + offset, humidity: humidityAt(timeMs) + offset });
  }
  return { silenceMs, points };
}

describe('air of the same probes throughout', () => {
  test('is the mean of probes that were known all the time', () => {
    const { points } = joinSameProbes([track(0, 60, 0), track(0, 60, 1)]);
    expect(points).toHaveLength(61);
    expect(points[30]).toEqual({ timeMs: 30 * MINUTE_MS, temperature: 21.5, humidity: 83.5 });
  });

  test('takes a probe read at other instants by the line between its readings', () => {
    const { points } = joinSameProbes([track(0, 60, 0), track(-1, 60, 2, MINUTE_MS / 2)]);
    expect(points.length).toBeGreaterThan(55);
    for (const { timeMs, humidity } of points) expect(humidity).toBeCloseTo(humidityAt(timeMs) + 1, 9);
  });

  test('leaves out for all of it a probe that fell silent half way, so that the air does not jump', () => {
    const { points } = joinSameProbes([track(0, 60, 0), track(0, 30, 10)]);
    expect(points.map(({ humidity }) => humidity)).toEqual(track(0, 60, 0).points.map(({ humidity }) => humidity));
  });

  test('leaves out the instants at which one of the probes taken is not known', () => {
    const gappy = track(0, 1000, 0).points.filter(({ timeMs }) => timeMs < 500 * MINUTE_MS || timeMs > 520 * MINUTE_MS);
    const { points } = joinSameProbes([track(0, 1000, 0), { silenceMs, points: gappy }]);
    expect(points).toHaveLength(gappy.length);
  });

  test('goes by the shortest silence of the probes taken', () => {
    const patient = { ...track(0, 60, 0), silenceMs: 2 * silenceMs };
    expect(joinSameProbes([patient, track(0, 60, 0)]).silenceMs).toBe(silenceMs);
  });

  test('is empty without a reading', () => {
    expect(joinSameProbes([]).points).toEqual([]);
    expect(joinSameProbes([{ silenceMs, points: [] }]).points).toEqual([]);
  });
});
