// What a replay answers: the shape that `takewell replay --json` prints. Times are RFC 3339 UTC.
import type { Priority, RuleId } from '../alarms/alarm.ts';
import type { DayExposure, Spread } from '../exposure/day-figures.ts';
import type { PerLimit } from '../exposure/limit-tally.ts';
import type { WarningFigures } from '../forecast/judge-warnings.ts';
import { utcText } from '../units.ts';

export interface ReplayedAlarm {
  readonly rule: RuleId;
  /** Highest it reached. */
  readonly priority: Priority;
  readonly occurredAt: string;
  /** null = it still stood at the end of the series. */
  readonly returnedAt: string | null;
  /** The value furthest from the limit; null for rules without a value. */
  readonly peak: number | null;
}

export interface ReplayedDay {
  readonly day: number;
  readonly from: string;
  readonly to: string;
  readonly temperature: Spread;
  readonly humidity: Spread;
  readonly minutesAbove: PerLimit;
  readonly degreeHoursAbove: PerLimit;
  readonly unknownHours: number;
}

/** Readings by the worst flag of their two halves; one with a half or all of it not there is missing, unless the other half is worse. */
export interface QualityTally {
  readonly pass: number;
  readonly suspect: number;
  readonly fail: number;
  readonly missing: number;
}

export interface ReplayResult {
  readonly alarms: readonly ReplayedAlarm[];
  readonly days: readonly ReplayedDay[];
  readonly quality: QualityTally;
  /** How well `heat-ahead` foretold the high temperature limit being passed. */
  readonly ahead: WarningFigures;
}

export function describeDay(day: DayExposure): ReplayedDay {
  return {
    day: day.day,
    from: utcText(day.fromMs),
    to: utcText(day.toMs),
    temperature: roundSpread(day.temperature),
    humidity: roundSpread(day.humidity),
    minutesAbove: roundEach(day.minutesAbove),
    degreeHoursAbove: roundEach(day.degreeHoursAbove),
    unknownHours: rounded(day.unknownHours),
  };
}

/** To six decimals: far finer than any sensor, and free of the dust of binary fractions. */
export function rounded(value: number): number {
  return Number(value.toFixed(6));
}

function roundSpread({ mean, min, max }: Spread): Spread {
  const roundOrNull = (value: number | null) => (value === null ? null : rounded(value));
  return { mean: roundOrNull(mean), min: roundOrNull(min), max: roundOrNull(max) };
}

function roundEach(figures: PerLimit): PerLimit {
  return Object.fromEntries(Object.entries(figures).map(([limit, value]) => [limit, rounded(value)]));
}
