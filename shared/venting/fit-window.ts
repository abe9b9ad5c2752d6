// The fit of one change of the gap: over as long a time as one pace explains. Where a wet floor dries or the bench cools behind the exchange, the
// first half hour shows the exchange, and two hours would show the drying.
import type { ExchangeWindow } from './cut-windows.ts';
import { fitRate, type RateFit, type RateResult } from './fit-rate.ts';
import type { WindowSeries } from './relaxation-model.ts';

/** Shorter lengths that are tried after the whole window, h (ours). */
const SHORTER_HOURS = [1, 0.5];
/**
 * What is left to fade just before the change may differ, by the curve carried back and as it was measured, by this share (ours), by this part
 * of the way carried back (a sensor that lags by a minute or two, an error of the rate), and by so many times the noise of a reading.
 */
const LEAST_TOLERANCE = 0.1;
const PART_OF_THE_WAY = 0.6;
const TIMES_NOISE = 3;

/** The longest length with a good fit that starts where the air stood; else why the whole window gives none. */
export function fitWindow(window: ExchangeWindow): RateResult {
  const whole = fitFrom(window, window.series);
  if (whole.fit !== null) return whole;
  for (const hours of SHORTER_HOURS) {
    const shorter = fitFrom(window, firstHours(window.series, hours));
    if (shorter.fit !== null) return shorter;
  }
  return whole;
}

function fitFrom({ before }: ExchangeWindow, series: WindowSeries): RateResult {
  const result = fitRate(series);
  if (result.fit === null || before === null || startsWhereItStood(series, result.fit, before)) return result;
  return { fit: null, why: 'two-paces' };
}

/** Humidity cannot jump: carried back to the change, the curve must meet the last reading before it. */
function startsWhereItStood(
  { steps }: WindowSeries,
  { start, source, ratePerHour, residual }: RateFit,
  before: NonNullable<ExchangeWindow['before']>,
): boolean {
  const { houseFrom, driveFrom } = steps[0] ?? { houseFrom: 0, driveFrom: 0 };
  const balance = houseFrom + (source / ratePerHour) * driveFrom;
  const wayBack = ratePerHour * before.hoursFromChange;
  const measured = before.ratio - balance;
  const jump = ((start - balance) * Math.exp(wayBack)) / measured;
  const largest =
    (1 + LEAST_TOLERANCE) * Math.exp(PART_OF_THE_WAY * wayBack) + (TIMES_NOISE * residual) / Math.abs(measured);
  return jump <= largest && jump >= 1 / largest;
}

function firstHours({ steps, values }: WindowSeries, hours: number): WindowSeries {
  let sum = 0;
  const kept = steps.filter((step) => {
    sum += step.hours;
    return sum <= hours;
  });
  const last = kept.findLast(({ reading }) => reading !== null)?.reading ?? 0;
  return { steps: kept, values: values.slice(0, last + 1) };
}
