// Which values of a chamber are outside today's limits just now. An alarm comes of it only when it lasts: that is the service's to say. Pure.
import type { ChamberView } from '../shared/api/chambers.ts';

export interface BeyondPlan {
  readonly temperature: 'hot' | 'cold' | null;
  readonly humidity: 'dry' | 'wet' | null;
}

type Now = Pick<ChamberView, 'climate' | 'limits'>;

function isAbove(value: number | null, limit: number): boolean {
  return value !== null && value > limit;
}

function isBelow(value: number | null, limit: number): boolean {
  return value !== null && value < limit;
}

/** Judged as the alarms are: the hottest, the coldest and the driest probe, and the shown humidity. A limit of 100 %RH watches nothing. */
export function beyondPlan({ climate, limits }: Now): BeyondPlan {
  if (limits === null) return { temperature: null, humidity: null };
  const { temperature, humidity } = limits;
  const isWet = humidity.high < 100 && isAbove(climate.humidity, humidity.high);
  return {
    temperature: isAbove(climate.hottest, temperature.high)
      ? 'hot'
      : isBelow(climate.coldest, temperature.low)
        ? 'cold'
        : null,
    humidity: isBelow(climate.driest, humidity.low) ? 'dry' : isWet ? 'wet' : null,
  };
}
