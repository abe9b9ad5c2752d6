// Broker lost: no message can come in, so that every chamber is blind at once. It stands for all alarms of silence, which are quiet meanwhile.
import { MINUTE_MS } from '../../units.ts';
import { noLimits, type Rule } from '../rules/rule.ts';
import type { ServiceScene } from './service-scene.ts';

export const brokerLost: Rule<ServiceScene> = {
  id: 'broker-lost',
  // With a batch in a tent it is as serious as a silent chamber, for all of them.
  priority: ['medium', 'critical'],
  worse: 1,
  // A broker that is restarted or updated is back within a minute (ours).
  onDelayMs: [2 * MINUTE_MS, 2 * MINUTE_MS],
  offDelayMs: 0,
  judge({ brokerTrouble, openBatches }) {
    if (brokerTrouble === null) return [{ probeId: null, level: 0, value: null, limits: noLimits }];
    const level = openBatches.length > 0 ? 2 : 1;
    const service = { trouble: brokerTrouble, blind: openBatches };
    return [{ probeId: null, level, value: null, limits: noLimits, service }];
  },
};
