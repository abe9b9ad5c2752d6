// The result of a replay for a reader: alarms, days, readings, and the forecast beside what came.
import { nameRule } from '../../shared/alarms/say-alarm.ts';
import type { WarningFigures } from '../../shared/forecast/judge-warnings.ts';
import { plainEnglish } from '../../shared/plain-english.ts';
import type { QualityTally, ReplayedAlarm, ReplayedDay, ReplayResult } from '../../shared/replay/replay-result.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import { makeTimeTexts } from '../record/time-texts.ts';

/** Lines of plain text; times as the clocks of the zone showed them. */
export function sayReplay({ alarms, days, quality, ahead }: ReplayResult, zone: string): string[] {
  const texts = makeTimeTexts(zone);
  const local = (time: string) => texts.local(Date.parse(time)).slice(0, 16);
  return [
    sayCount(alarms.length),
    ...alarms.map((alarm) => `  ${sayAlarmRow(alarm, local)}`),
    '',
    ...sayDays(days, local),
    sayQuality(quality),
    sayAhead(ahead),
  ];
}

function sayCount(count: number): string {
  if (count === 0) return 'No alarm would have come.';
  return count === 1 ? 'One alarm would have come:' : `${count} alarms would have come:`;
}

/** Of the peak, where it is not °C. */
const units: Partial<Record<ReplayedAlarm['rule'], string>> = {
  dry: '%RH',
  wet: '%RH',
  'plan-late': '%RH',
  vpd: 'kPa',
};

function sayAlarmRow(
  { rule, priority, occurredAt, returnedAt, peak }: ReplayedAlarm,
  local: (time: string) => string,
): string {
  const lasted = returnedAt === null ? 'to the end' : sayDuration(Date.parse(returnedAt) - Date.parse(occurredAt));
  const worst = peak === null ? '' : `${peak.toFixed(rule === 'vpd' ? 2 : 1)} ${units[rule] ?? '°C'}`;
  return `${local(occurredAt)}  ${nameRule(rule, plainEnglish).padEnd(16)}${priority.padEnd(10)}${lasted.padEnd(12)}${worst}`.trimEnd();
}

function sayDuration(ms: number): string {
  const minutes = Math.round(ms / MINUTE_MS);
  return minutes < 120 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
}

const headings = [
  'day',
  'from',
  '°C mean',
  'min',
  'max',
  '%RH mean',
  'min',
  'max',
  'minutes >28',
  'minutes >29',
  '°C·h >28',
  'h unknown',
];
const widths = [3, 16, 7, 5, 5, 8, 5, 5, 11, 11, 8, 9];

function sayDays(days: readonly ReplayedDay[], local: (time: string) => string): string[] {
  if (days.length === 0) return [];
  return [inColumns(headings), ...days.map((day) => inColumns(dayCells(day, local))), ''];
}

function dayCells(day: ReplayedDay, local: (time: string) => string): string[] {
  const { temperature, humidity, minutesAbove, degreeHoursAbove, unknownHours } = day;
  const spread = [temperature.mean, temperature.min, temperature.max, humidity.mean, humidity.min, humidity.max];
  const beyond = [minutesAbove['28'], minutesAbove['29'], degreeHoursAbove['28'], unknownHours];
  return [String(day.day), local(day.from), ...[...spread, ...beyond].map((value) => value?.toFixed(1) ?? '–')];
}

function inColumns(cells: readonly string[]): string {
  return cells.map((cell, i) => cell.padStart(widths[i] ?? 0)).join('  ');
}

function sayQuality({ pass, suspect, fail, missing }: QualityTally): string {
  return `Readings: ${pass} pass, ${suspect} suspect, ${fail} fail, ${missing} missing.`;
}

function sayAhead({ warnings, crossings, caught, medianLeadMinutes, falsePerWeek }: WarningFigures): string {
  const lead = medianLeadMinutes === null ? '' : `, by ${medianLeadMinutes.toFixed(0)} min in the median`;
  return `Heat ahead: the high limit was passed ${times(crossings)}, ${caught} of them foretold${lead}; ${warnings} warnings, ${falsePerWeek.toFixed(1)} false ones a week.`;
}

function times(count: number): string {
  return count === 1 ? 'once' : `${count} times`;
}
