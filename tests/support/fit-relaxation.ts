// The fit of a rate as other programs do it: on values alone, toward an end that is not known. By it `fitRate` is held against known courses and
// against SciPy; rate and end come out together.
import type { TimedValue } from '../../shared/exposure/segments.ts';
import { HOUR_MS } from '../../shared/units.ts';
import { fitRate } from '../../shared/venting/fit-rate.ts';
import type { WindowSeries } from '../../shared/venting/relaxation-model.ts';
import { studentT975 } from '../../shared/venting/student-t.ts';
import type { Refusal } from '../../shared/venting/why-not.ts';

/** value(t) = end + (start − end)·exp(−rate·t). Errors are standard errors, intervals 95 %. */
export interface Relaxation {
  readonly ratePerHour: number;
  readonly rateError: number;
  readonly rateInterval: { readonly low: number; readonly high: number };
  readonly start: number;
  readonly end: number;
  readonly endError: number;
  readonly endInterval: { readonly low: number; readonly high: number };
  readonly r2: number;
  readonly readings: number;
}

export type RelaxationResult = { readonly relaxation: Relaxation } | ({ readonly relaxation: null } & Refusal);

/**
 * Fits rate, start and end of values in order of time; one that is not later than the last is passed over. The end is taken as constant: give
 * a window short enough for that. Any unit; for air use the humidity ratio.
 */
export function fitRelaxation(values: Iterable<TimedValue>): RelaxationResult {
  const result = fitRate(seriesOf(values));
  if (result.fit === null) {
    const { fit: _, ...refusal } = result;
    return { relaxation: null, ...refusal };
  }
  const { ratePerHour, rateError, interval, start, source, sourceErrorAlone, sourceSlope, ...fit } = result.fit;
  const end = source / ratePerHour;
  // The source moves with the rate along the fit, and the end much less, since both errors go the same way.
  const endError = Math.hypot(sourceErrorAlone, (sourceSlope - end) * rateError) / ratePerHour;
  const reach = studentT975(fit.degreesOfFreedom) * endError;
  return {
    relaxation: {
      ratePerHour,
      rateError,
      rateInterval: interval,
      start,
      end,
      endError,
      endInterval: { low: end - reach, high: end + reach },
      r2: fit.r2,
      readings: fit.readings,
    },
  };
}

/** No house air, and a drive of 1: what the value runs toward is then source / rate. */
function seriesOf(values: Iterable<TimedValue>): WindowSeries {
  const kept: TimedValue[] = [];
  for (const one of values) if (one.timeMs > (kept.at(-1)?.timeMs ?? -Infinity)) kept.push(one);
  const level = { houseFrom: 0, houseTo: 0, driveFrom: 1, driveTo: 1 };
  const steps = kept.slice(1).map(({ timeMs }, i) => {
    return { ...level, hours: (timeMs - (kept[i]?.timeMs ?? timeMs)) / HOUR_MS, reading: i + 1 };
  });
  return { steps, values: kept.map(({ value }) => value) };
}
