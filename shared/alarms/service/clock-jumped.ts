// Clock jumped: the machine's clock was set, or stood wrong. It happens at an instant: told once, it has nothing to return from.
import { MINUTE_MS } from '../../units.ts';
import { noLimits, type Rule } from '../rules/rule.ts';
import type { ServiceScene } from './service-scene.ts';

/** A clock that is kept by the network is moved by less; ours. */
export const LEAST_JUMP_MS = MINUTE_MS;

export const clockJumped: Rule<ServiceScene> = {
  id: 'clock-jumped',
  priority: ['medium', 'medium'],
  worse: 1,
  isInstant: true,
  onDelayMs: [0, 0],
  offDelayMs: 0,
  judge({ clockJumpMs }) {
    if (clockJumpMs === null) return [{ probeId: null, level: 0, value: null, limits: noLimits }];
    return [{ probeId: null, level: 1, value: clockJumpMs / MINUTE_MS, limits: noLimits }];
  },
};
