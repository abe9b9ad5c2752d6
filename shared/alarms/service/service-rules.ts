// All rules about the service itself, in the order in which they are judged.
import type { Rule } from '../rules/rule.ts';
import { brokerLost } from './broker-lost.ts';
import { clockJumped } from './clock-jumped.ts';
import { diskNearlyFull } from './disk-nearly-full.ts';
import { deliveryFailing, nobodyOnDuty, nobodyReachable } from './reach-rules.ts';
import { restarted } from './restarted.ts';
import type { ServiceScene } from './service-scene.ts';

export const serviceRules: readonly Rule<ServiceScene>[] = [
  brokerLost,
  diskNearlyFull,
  clockJumped,
  restarted,
  deliveryFailing,
  nobodyOnDuty,
  nobodyReachable,
];
