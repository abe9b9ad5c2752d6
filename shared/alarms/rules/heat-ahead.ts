// Heat ahead: the hottest healthy canopy probe will probably pass the high limit soon. A forecast, so of medium priority; once heat itself stands
// it has said what it had to say.
import { isHeatAhead } from '../../forecast/heat-ahead.ts';
import { MINUTE_MS } from '../../units.ts';
import { nothingBeyond } from './beyond-limit.ts';
import type { Rule } from './rule.ts';

export const heatAhead: Rule = {
  id: 'heat-ahead',
  suppressedBy: 'heat',
  priority: ['medium', 'medium'],
  worse: 1,
  // The chance is the delay: it takes some readings to grow. A quarter of an hour of calm before it is taken back (ours, from replay).
  onDelayMs: [0, 0],
  offDelayMs: 15 * MINUTE_MS,
  judge({ corridor, climate, ahead }, held) {
    if (corridor === null) return [nothingBeyond];
    const { high } = corridor.temperature;
    const value = climate.hottest;
    const seen = { probeId: null, value, limits: [high, null] as const };
    if (value === null || ahead === null || ahead === undefined) return [{ ...seen, level: 'unknown' }];
    // It has come: a warning stands until heat takes over, and none begins.
    const stands = held(null) > 0;
    const isDue = value > high ? stands : isHeatAhead(ahead, stands);
    return [{ ...seen, level: isDue ? 1 : 0, expected: ahead.expected }];
  },
};
