// Restarted: the watch is back after a gap in which nobody watched. One message for all that happened meanwhile; told once, it has nothing
// to return from.
import { noLimits, type Rule } from '../rules/rule.ts';
import type { OutageFacts } from '../service-facts.ts';
import type { ServiceScene } from './service-scene.ts';

export const restarted: Rule<ServiceScene> = {
  id: 'restarted',
  // High when plants may have suffered, or nobody can say.
  priority: ['medium', 'high'],
  worse: 1,
  isInstant: true,
  onDelayMs: [0, 0],
  offDelayMs: 0,
  judge({ outage }) {
    if (outage === null) return [{ probeId: null, level: 0, value: null, limits: noLimits }];
    const level = mayHaveHurt(outage) ? 2 : 1;
    return [{ probeId: null, level, value: null, limits: noLimits, sinceMs: outage.fromMs, service: { outage } }];
  },
};

function mayHaveHurt({ chambers, inForce }: OutageFacts): boolean {
  return inForce.length > 0 || chambers.some((one) => one.minutesHot + one.minutesDry + one.minutesUnknown >= 1);
}
