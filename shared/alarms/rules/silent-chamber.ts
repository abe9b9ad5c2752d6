// Silent chamber: a batch is in it and no canopy probe gives a temperature that can be trusted. Nobody can say how hot it is: treated as
// serious as heat. A probe that still gives a good humidity does not make up for it.
import { MINUTE_MS } from '../../units.ts';
import { noLimits, type Rule } from './rule.ts';

export const silentChamber: Rule = {
  id: 'silent-chamber',
  priority: ['high', 'critical'],
  worse: 1,
  needsReadings: true,
  // The probes' allowed silence has passed already; the minute covers a batch opened before its probe first speaks.
  onDelayMs: [MINUTE_MS, 30 * MINUTE_MS],
  offDelayMs: 0,
  judge({ batchId, climate }) {
    const isBlind = batchId !== null && climate.temperature === null;
    return [{ probeId: null, level: isBlind ? 2 : 0, value: null, limits: noLimits }];
  },
};
