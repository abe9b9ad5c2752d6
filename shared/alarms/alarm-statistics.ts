// How the alarms of a stretch of time measure up to the targets of IEC 62682: few enough to be taken in, rightly weighed, none that
// chatters or stands for ever. It judges the alarm system, never a person.
import { Temporal } from 'temporal-polyfill';
import { DAY_MS, HOUR_MS, MINUTE_MS } from '../units.ts';
import { type AlarmState, type Priority, priorities, type RuleId } from './alarm.ts';
import { floodSpans } from './flood.ts';

/** Targets of IEC 62682 / ISA-18.2; chattering: the usual start. */
export const alarmTargets = {
  perHourAcceptable: 6,
  perHourMost: 12,
  /** Shares of low, medium, and high with critical. */
  priorityShares: { low: 0.8, medium: 0.15, high: 0.05 },
  /** On any day. */
  staleFewerThan: 5,
  chatteringMost: 0,
} as const;

const STALE_AFTER_MS = DAY_MS;
const CHATTERING_TIMES = 3;

/** One beginning or end of an alarm, in order of time. */
export interface AlarmStep {
  readonly alarmId: string;
  readonly chamberId: string;
  readonly rule: RuleId;
  readonly subjectId: string | null;
  readonly atMs: number;
  readonly change: 'occurred' | 'occurred-again' | 'returned';
  readonly toState: AlarmState;
  readonly priority: Priority;
}

export interface DayOfAlarms {
  /** Local date at the site. */
  readonly date: string;
  readonly alarms: number;
  readonly byPriority: Readonly<Record<Priority, number>>;
  /** Alarms that stood for more than a day already. */
  readonly stale: number;
}

export interface AlarmSource {
  readonly chamberId: string;
  readonly rule: RuleId;
  readonly subjectId: string | null;
  readonly alarms: number;
}

export interface AlarmStatistics {
  readonly alarms: number;
  readonly hours: number;
  readonly perHour: number;
  /** Most in any hour that begins with an alarm. */
  readonly busiestHour: number;
  /** Share of each priority, 0–1; null without alarms. */
  readonly shares: Readonly<Record<Priority, number>> | null;
  readonly days: readonly DayOfAlarms[];
  /** What began three times within a minute. */
  readonly chattering: readonly AlarmSource[];
  /** Share of the time, 0–1. */
  readonly floodShare: number;
  readonly floods: number;
  /** The busiest sources, at most ten. */
  readonly mostFrequent: readonly AlarmSource[];
}

export interface Stretch {
  readonly fromMs: number;
  readonly toMs: number;
  /** IANA zone of the site: its days are counted. */
  readonly zone: string;
}

/** The part of a stretch in which there was anything to watch, so that a young site is not divided by days before it. */
export function watchedPart(stretch: Stretch, watchedSinceMs: number): Stretch {
  return { ...stretch, fromMs: Math.min(stretch.toMs, Math.max(stretch.fromMs, watchedSinceMs)) };
}

/** Statistics of [from, to); rates of an empty stretch are 0. `steps` in order, with the beginnings from before that still stood. */
export function alarmStatistics(steps: readonly AlarmStep[], stretch: Stretch): AlarmStatistics {
  const { fromMs, toMs } = stretch;
  const begun = steps.filter((step) => isAnnounced(step) && step.atMs >= fromMs && step.atMs < toMs);
  const times = begun.map(({ atMs }) => atMs);
  const floods = floodSpans(times);
  const floodMs = floods.reduce((sum, span) => sum + Math.min(span.toMs, toMs) - span.fromMs, 0);
  const hours = (toMs - fromMs) / HOUR_MS;
  return {
    alarms: begun.length,
    hours,
    perHour: hours === 0 ? 0 : begun.length / hours,
    busiestHour: mostWithin(times, HOUR_MS),
    shares: begun.length === 0 ? null : countByPriority(begun, (count) => count / begun.length),
    days: daysOf(stretch).map((day) => describeDay(day, begun, standingSpans(steps))),
    chattering: sourcesOf(begun).flatMap(({ source, all }) =>
      mostWithin(all, MINUTE_MS) >= CHATTERING_TIMES ? [source] : [],
    ),
    floodShare: hours === 0 ? 0 : floodMs / (toMs - fromMs),
    floods: floods.length,
    mostFrequent: sourcesOf(begun)
      .map(({ source }) => source)
      .sort((a, b) => b.alarms - a.alarms)
      .slice(0, 10),
  };
}

/** What came back while it was set aside asked nobody for anything. */
function isAnnounced({ change, toState }: AlarmStep): boolean {
  return change !== 'returned' && toState === 'unacknowledged';
}

interface Span {
  readonly fromMs: number;
  readonly toMs: number;
}

type Day = Span & { readonly date: string };

/** The local days that touch the stretch, cut to it. */
function daysOf({ fromMs, toMs, zone }: Stretch): Day[] {
  const days: Day[] = [];
  if (fromMs === toMs) return days;
  let start = Temporal.Instant.fromEpochMilliseconds(fromMs).toZonedDateTimeISO(zone).startOfDay();
  while (start.epochMilliseconds < toMs) {
    const next = start.add({ days: 1 }).startOfDay();
    const span = { fromMs: Math.max(fromMs, start.epochMilliseconds), toMs: Math.min(toMs, next.epochMilliseconds) };
    days.push({ date: start.toPlainDate().toString(), ...span });
    start = next;
  }
  return days;
}

function describeDay({ date, fromMs, toMs }: Day, begun: readonly AlarmStep[], spans: readonly Span[]): DayOfAlarms {
  const own = begun.filter(({ atMs }) => atMs >= fromMs && atMs < toMs);
  const stale = spans.filter((span) => span.fromMs + STALE_AFTER_MS < toMs && span.toMs > fromMs && isLong(span));
  return { date, alarms: own.length, byPriority: countByPriority(own, (count) => count), stale: stale.length };
}

function isLong({ fromMs, toMs }: Span): boolean {
  return toMs - fromMs > STALE_AFTER_MS;
}

/** When each alarm stood; one that has not returned stands without end. */
function standingSpans(steps: readonly AlarmStep[]): Span[] {
  return [...Map.groupBy(steps, ({ alarmId }) => alarmId).values()].flatMap((own) =>
    own.flatMap(({ change, atMs }, index) =>
      change === 'returned' ? [] : [{ fromMs: atMs, toMs: own[index + 1]?.atMs ?? Infinity }],
    ),
  );
}

function sourcesOf(begun: readonly AlarmStep[]): { source: AlarmSource; all: number[] }[] {
  const keyOf = ({ chamberId, rule, subjectId }: AlarmStep) => JSON.stringify([chamberId, rule, subjectId]);
  return [...Map.groupBy(begun, keyOf).values()].flatMap((own) => {
    const [first] = own;
    if (first === undefined) return [];
    const { chamberId, rule, subjectId } = first;
    return [{ source: { chamberId, rule, subjectId, alarms: own.length }, all: own.map(({ atMs }) => atMs) }];
  });
}

/** Most of `timesMs`, in order, within any stretch of this length. */
function mostWithin(timesMs: readonly number[], lengthMs: number): number {
  let most = 0;
  let first = 0;
  for (const [index, ms] of timesMs.entries()) {
    while (ms - (timesMs[first] ?? ms) >= lengthMs) first += 1;
    most = Math.max(most, index - first + 1);
  }
  return most;
}

function countByPriority(begun: readonly AlarmStep[], say: (count: number) => number): Record<Priority, number> {
  const count = (priority: Priority) => say(begun.filter((one) => one.priority === priority).length);
  const [critical, high, medium, low] = priorities.map(count);
  return { critical: critical ?? 0, high: high ?? 0, medium: medium ?? 0, low: low ?? 0 };
}
