// The few exposures that batches are compared by. Each that is asked for makes the answer about all others weaker, so there are few, and they
// are fixed before anybody looks.
import type { PartExposure } from '../exposure/part-exposure.ts';
import { HOUR_MS } from '../units.ts';

export const exposureNames = [
  'degree-hours-above-28',
  'highest-temperature',
  'mean-temperature',
  'vpd-hours-first-three-days',
  'hours-outside-humidity-corridor',
] as const;
export type ExposureName = (typeof exposureNames)[number];

/** The measured parts of one batch. */
export interface MeasuredParts {
  readonly days: readonly (PartExposure & { readonly day: number })[];
  /** null = the chamber was never closed. */
  readonly whole: PartExposure | null;
}

/** Days in which a scion has no water of its own and lives on what it does not lose. */
const FIRST_DAYS = 3;
/** A part of which more than this share is unknown cannot be compared (ours). */
const LARGEST_UNKNOWN = 0.2;

/**
 * The exposures of a batch; null where too much of the time is unknown. Amounts that grow with time are scaled up to the whole of it, so that a
 * batch does not look spared because nobody measured: this takes the unknown hours to have been as the known ones. All to tenths: batches that
 * differ by less are equal, since no probe could tell them apart.
 */
export function batchExposures({ days, whole }: MeasuredParts): Record<ExposureName, number | null> {
  const first = days.filter(({ day }) => day <= FIRST_DAYS);
  const known = whole !== null && isKnown([whole]) ? whole : null;
  const areFirstKnown = first.length === FIRST_DAYS && isKnown(first);
  const vpdHours = first.reduce((sum, { vpdHours: hours }) => sum + hours, 0);
  return {
    'degree-hours-above-28': known === null ? null : tenths((known.degreeHoursAbove['28'] ?? 0) * scaleOf([known])),
    'highest-temperature': tenths(known?.temperature.max ?? null),
    'mean-temperature': tenths(known?.temperature.mean ?? null),
    'vpd-hours-first-three-days': areFirstKnown ? tenths(vpdHours * scaleOf(first)) : null,
    'hours-outside-humidity-corridor': known === null ? null : tenths(hoursOutside(known)),
  };
}

function tenths(value: number | null): number | null {
  return value === null ? null : Math.round(10 * value) / 10;
}

function isKnown(parts: readonly PartExposure[]): boolean {
  const hours = hoursOf(parts);
  return hours > 0 && unknownOf(parts) <= LARGEST_UNKNOWN * hours;
}

function scaleOf(parts: readonly PartExposure[]): number {
  const hours = hoursOf(parts);
  return hours / (hours - unknownOf(parts));
}

function hoursOutside(whole: PartExposure): number | null {
  const { share } = whole.insideCorridor.humidity;
  return share === null ? null : (1 - share) * hoursOf([whole]);
}

function hoursOf(parts: readonly PartExposure[]): number {
  return parts.reduce((sum, { fromMs, toMs }) => sum + (toMs - fromMs) / HOUR_MS, 0);
}

function unknownOf(parts: readonly PartExposure[]): number {
  return parts.reduce((sum, { unknownHours }) => sum + unknownHours, 0);
}
