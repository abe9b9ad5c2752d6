// Whether alerts arrive: everything sent to a person fails, nobody is on duty or soon will not be, nobody can be told at all. Without an
// open batch there is nothing to be told of, and all of them are quiet.
import { DAY_MS, HOUR_MS, MINUTE_MS } from '../../units.ts';
import { type Judgement, noLimits, type Rule } from '../rules/rule.ts';
import type { PersonReach, ServiceScene } from './service-scene.ts';

/** A gap in the rota is warned of so long before; ours. */
const GAP_AHEAD_MS = DAY_MS;

const calm: Judgement = { probeId: null, level: 0, value: null, limits: noLimits };

/** One alarm a person. */
export const deliveryFailing: Rule<ServiceScene> = {
  id: 'delivery-failing',
  // High while the person is the one to be woken.
  priority: ['medium', 'high'],
  worse: 1,
  onDelayMs: [5 * MINUTE_MS, 5 * MINUTE_MS],
  offDelayMs: 0,
  judge({ openBatches, reach }) {
    const isNeeded = openBatches.length > 0;
    return (reach?.people ?? []).map((person) => {
      const level = isNeeded && allFail(person) ? (person.isOnDuty ? 2 : 1) : 0;
      const about = { id: person.personId, question: person.name, ifNo: '' };
      const trouble = person.ways.find((way) => way.trouble !== null)?.trouble ?? null;
      const service = trouble === null ? {} : { service: { trouble } };
      return { probeId: null, about, level, value: null, limits: noLimits, ...service };
    });
  },
};

export const nobodyOnDuty: Rule<ServiceScene> = {
  id: 'nobody-on-duty',
  // Level 1 warns before; level 2 is now.
  priority: ['low', 'high'],
  worse: -1,
  onDelayMs: [MINUTE_MS, MINUTE_MS],
  offDelayMs: 0,
  judge({ nowMs, openBatches, reach }) {
    const duty = reach?.duty ?? null;
    if (duty === null || openBatches.length === 0) return [calm];
    if (!duty.isAnybodyOn) return [{ probeId: null, level: 2, value: 0, limits: noLimits }];
    const aheadMs = duty.nextGapMs === null ? null : duty.nextGapMs - nowMs;
    const isNear = aheadMs !== null && aheadMs < GAP_AHEAD_MS;
    // Whole hours: the alarm is written when it changes, not each round.
    const hours = aheadMs === null ? null : Math.ceil(aheadMs / HOUR_MS);
    return [{ probeId: null, level: isNear ? 1 : 0, value: isNear ? hours : null, limits: noLimits }];
  },
};

export const nobodyReachable: Rule<ServiceScene> = {
  id: 'nobody-reachable',
  // A program that takes notices may still tell somebody. Nobody can be rung for the other: who looks at the screen is told.
  priority: ['low', 'medium'],
  worse: 1,
  // Who sets up a site has a while to sign up a phone.
  onDelayMs: [15 * MINUTE_MS, 15 * MINUTE_MS],
  offDelayMs: 0,
  judge({ openBatches, reach }) {
    if (reach === null || openBatches.length === 0) return [calm];
    const isReachable = reach.people.some(({ ways }) => ways.some(({ works }) => works));
    const level = isReachable ? 0 : reach.hasProgram ? 1 : 2;
    return [{ probeId: null, level, value: null, limits: noLimits }];
  },
};

function allFail({ ways }: PersonReach): boolean {
  return ways.length > 0 && ways.every(({ works }) => !works);
}
