// How often alarms came, beside their targets, as rows and sentences. Pure. It judges the alarms, never the people.
import { SERVICE_ID, SERVICE_NAME } from '../../shared/alarms/alarm.ts';
import type { AlarmStatisticsView } from '../../shared/api/alarm-statistics.ts';
import { numberText } from '../quantities.ts';
import { words } from '../strings.ts';

const { howOften } = words;
const HOURS_A_DAY = 24;
/** Of less than this, alarms a day say nothing: three in the first ten minutes are no flood of four hundred. */
const SHORTEST_RATE_HOURS = HOURS_A_DAY;
const isLongEnough = ({ hours }: AlarmStatisticsView) => hours >= SHORTEST_RATE_HOURS;

export interface Measure {
  readonly name: string;
  readonly found: string;
  readonly target: string;
}

/** "0.4", "12": a digit after the point only where it tells something. */
function rateText(perDay: number): string {
  return perDay >= 10 ? numberText(perDay, 0) : numberText(perDay, 1);
}

function percent(share: number): string {
  return howOften.percent(Math.round(100 * share));
}

/** Most of `count` over the days; 0 without days. */
function mostOf(
  count: (day: AlarmStatisticsView['days'][number]) => number,
  days: AlarmStatisticsView['days'],
): number {
  return Math.max(0, ...days.map(count));
}

function shareRows({ shares, targets }: AlarmStatisticsView): readonly Measure[] {
  if (shares === null) return [];
  const found = { low: shares.low, medium: shares.medium, high: shares.high + shares.critical };
  return (['low', 'medium', 'high'] as const).map((one) => ({
    name: howOften.shares[one],
    found: percent(found[one]),
    target: howOften.about(percent(targets.priorityShares[one])),
  }));
}

/** One row for each thing that has a target; the priorities only where there were alarms. */
export function measuresOf(view: AlarmStatisticsView): readonly Measure[] {
  const { days, targets } = view;
  const [aDay, most] = [targets.perHourAcceptable, targets.perHourMost].map((perHour) =>
    rateText(perHour * HOURS_A_DAY),
  );
  return [
    {
      name: howOften.aDay,
      found: isLongEnough(view) ? rateText(view.perHour * HOURS_A_DAY) : howOften.tooEarly,
      target: howOften.aDayTarget(aDay ?? '', most ?? ''),
    },
    {
      name: howOften.busiestDay,
      found: String(mostOf(({ alarms }) => alarms, days)),
      target: words.units.none,
    },
    ...shareRows(view),
    {
      name: howOften.stale,
      found: String(mostOf(({ stale }) => stale, days)),
      target: howOften.fewerThan(targets.staleFewerThan),
    },
    {
      name: howOften.chattering,
      found: String(view.chattering.length),
      target: targets.chatteringMost === 0 ? howOften.noneAllowed : howOften.atMost(targets.chatteringMost),
    },
  ];
}

/** "30 days", "5 hours": a young site is said to be young. */
function spanOf({ hours }: AlarmStatisticsView): string {
  return hours >= 2 * HOURS_A_DAY
    ? howOften.days(Math.round(hours / HOURS_A_DAY))
    : howOften.hours(Math.max(1, Math.round(hours)));
}

/** What the figures come to: whether too many came, too many stand, or some chatter; shares of few alarms are not judged. */
export function verdictOf(view: AlarmStatisticsView): string {
  const span = spanOf(view);
  if (view.alarms === 0 && mostOf(({ stale }) => stale, view.days) === 0) return howOften.none(span);
  const { targets } = view;
  const perHour = isLongEnough(view) ? view.perHour : 0;
  const faults = [
    ...(perHour > targets.perHourMost ? [howOften.tooMany] : []),
    ...(perHour > targets.perHourAcceptable && perHour <= targets.perHourMost ? [howOften.many] : []),
    ...(mostOf(({ stale }) => stale, view.days) >= targets.staleFewerThan ? [howOften.tooStale] : []),
    ...(view.chattering.length > targets.chatteringMost ? [howOften.someChatter] : []),
  ];
  return `${howOften.count(view.alarms, span)} ${faults.length === 0 ? howOften.within : faults.join(' ')}`;
}

/** One line for each source of alarms. `chamberName` gives null for a chamber that is gone. */
export function sourceLines(
  sources: AlarmStatisticsView['chattering'],
  chamberName: (id: string) => string | null,
): readonly string[] {
  return sources.map(({ chamberId, rule, alarms }) =>
    howOften.source(placeName(chamberId, chamberName), words.rules[rule], alarms),
  );
}

function placeName(id: string, chamberName: (id: string) => string | null): string {
  return id === SERVICE_ID ? SERVICE_NAME : (chamberName(id) ?? howOften.goneChamber);
}
