// Suspect probe: a canopy probe whose values are left out of the climate, or that its neighbours do not back. It tells a person to look;
// it never says how hot or dry it is.
import { healthyCanopy, leftOutReadings } from '../../readings/chamber-climate.ts';
import { compareNeighbours } from '../../readings/quality/neighbours.ts';
import { MINUTE_MS } from '../../units.ts';
import { type Judgement, noLimits, type Rule, type Scene } from './rule.ts';

type Readings = NonNullable<Scene['readings']>;

export const suspectProbe: Rule = {
  id: 'suspect-probe',
  // Level 2: the heat watch has lost the probe.
  priority: ['low', 'medium'],
  worse: 1,
  // A step of venting reaches one probe before another, and a spike passes with the next reading (ours).
  onDelayMs: [30 * MINUTE_MS, 5 * MINUTE_MS],
  offDelayMs: 10 * MINUTE_MS,
  judge({ nowMs, batchId, readings }) {
    if (batchId === null || readings === undefined) return [];
    const canopy = readings.filter(({ place }) => place === 'canopy');
    const leftOut = leftOutReadings(canopy, nowMs);
    const odd = new Set(leftOut.map(({ probeId }) => probeId));
    // Neighbours are asked only where there are any.
    if (canopy.length > 1) for (const { probeId } of compareNeighbours(healthyCanopy(canopy, nowMs))) odd.add(probeId);
    return canopy.map((probe) => judgeProbe(probe, leftOut, odd, nowMs));
  },
};

function judgeProbe(
  { probeId, timeMs, silenceMs }: Readings[number],
  leftOut: ReturnType<typeof leftOutReadings>,
  odd: ReadonlySet<string>,
  nowMs: number,
): Judgement {
  const base = { probeId, value: null, limits: noLimits };
  // A silent probe says nothing for or against itself.
  if (nowMs - timeMs > silenceMs) return { ...base, level: 'unknown' };
  const lost = leftOut.find((one) => one.probeId === probeId && one.quantity === 'temperature');
  if (lost !== undefined) return { ...base, level: 2, value: lost.value };
  return { ...base, level: odd.has(probeId) ? 1 : 0 };
}
