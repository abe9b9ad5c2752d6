// Disk nearly full: below a tenth of free room somebody has to make some; without any, readings are no longer stored and nobody is watching.
import { MINUTE_MS, SECOND_MS } from '../../units.ts';
import { noLimits, type Rule } from '../rules/rule.ts';
import type { ServiceScene } from './service-scene.ts';

/** Below this share of free room, %, the disk is told to be nearly full; common practice. */
export const LEAST_FREE_PERCENT = 10;
/** It is over when there is so much more, %; ours. */
const DEADBAND_PERCENT = 2;

export const diskNearlyFull: Rule<ServiceScene> = {
  id: 'disk-nearly-full',
  priority: ['high', 'critical'],
  worse: -1,
  // A backup or an update fills a disk for a moment; a store that cannot write loses time at once (ours).
  onDelayMs: [MINUTE_MS, 10 * SECOND_MS],
  offDelayMs: 0,
  judge({ disk }, held) {
    const { freePercent, storeTrouble } = disk;
    const limits = [LEAST_FREE_PERCENT, null] as const;
    if (storeTrouble !== null)
      return [{ probeId: null, level: 2, value: freePercent, limits, service: { trouble: storeTrouble } }];
    if (freePercent === null) return [{ probeId: null, level: 'unknown', value: null, limits: noLimits }];
    return [{ probeId: null, level: isShort(freePercent, held(null) > 0) ? 1 : 0, value: freePercent, limits }];
  },
};

function isShort(freePercent: number, isHeld: boolean): boolean {
  return freePercent < LEAST_FREE_PERCENT + (isHeld ? DEADBAND_PERCENT : 0);
}
