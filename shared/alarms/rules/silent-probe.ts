// Silent probe: one probe of a chamber with a batch has not been heard for longer than it may be silent.
import { MINUTE_MS } from '../../units.ts';
import type { Rule, SceneProbe } from './rule.ts';

export const silentProbe: Rule = {
  id: 'silent-probe',
  priority: ['low', 'low'],
  worse: 1,
  needsReadings: true,
  // The allowed silence is the delay.
  onDelayMs: [0, 0],
  offDelayMs: 0,
  judge({ nowMs, batchId, probes }) {
    return probes.map((probe) => {
      const sinceMs = silentSince(probe);
      const isSilent = batchId !== null && nowMs - sinceMs > probe.silenceMs;
      // No value: the minutes of silence grow by themselves and follow from `sinceMs`.
      return {
        probeId: probe.probeId,
        level: isSilent ? 1 : 0,
        value: null,
        limits: [probe.silenceMs / MINUTE_MS, null],
        sinceMs,
      };
    });
  },
};

function silentSince(probe: SceneProbe): number {
  return Math.max(probe.lastHeardMs ?? probe.watchedSinceMs, probe.watchedSinceMs);
}
