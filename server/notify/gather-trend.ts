// Where the quantity of an alarm is heading, from the stored minutes before its notice is sent.
import type { Alarm, RuleId } from '../../shared/alarms/alarm.ts';
import { chamberTrend } from '../../shared/telling/trend.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import type { DeliveryParts } from './delivery-parts.ts';

export interface Trend {
  readonly quantity: 'temperature' | 'humidity';
  /** °C or %RH a minute. */
  readonly perMinute: number;
}

const MINUTES = 12;

const quantities: Partial<Record<RuleId, Trend['quantity']>> = {
  heat: 'temperature',
  cold: 'temperature',
  'heat-ahead': 'temperature',
  dry: 'humidity',
  wet: 'humidity',
  'plan-late': 'humidity',
};

/** null for an alarm that is over or about no quantity, and when too little was heard. Raw values do: an offset has no slope. */
export async function gatherTrend(
  alarm: Alarm,
  { probes, readings }: Pick<DeliveryParts['store'], 'probes' | 'readings'>,
  nowMs: number,
): Promise<Trend | null> {
  const quantity = quantities[alarm.rule];
  if (quantity === undefined || alarm.level === 0) return null;
  const standing = (await probes.standingIn(alarm.chamberId)).filter(
    ({ placement, outOfService }) => placement?.place === 'canopy' && !outOfService,
  );
  const query = { fromMs: nowMs - MINUTES * MINUTE_MS, bucketMs: MINUTE_MS, count: MINUTES };
  const series = await Promise.all(
    standing.map(async ({ number }) =>
      (await readings.buckets(number, query)).flatMap((bucket) => {
        const value = bucket[quantity];
        return value === null ? [] : [{ minute: bucket.index, value: value.sum / value.count }];
      }),
    ),
  );
  const perMinute = chamberTrend(series);
  return perMinute === null ? null : { quantity, perMinute };
}
