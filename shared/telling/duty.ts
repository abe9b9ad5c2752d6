// Who is on duty when: a weekly rota on the clock of the site, laid over real days, so that a shift of the clock neither opens a hole
// between two people nor lets them overlap.
import { Temporal } from 'temporal-polyfill';
import { type Stretch, stretchOn } from '../healing/time-of-day.ts';

/** One stretch of every week. Times of day are `HH:MM`; an end that is not after its beginning lies on the next day. */
export interface DutySpan {
  readonly personId: string;
  /** 1 = Monday … 7 = Sunday: the day on which it begins. */
  readonly weekday: number;
  readonly from: string;
  readonly to: string;
}

export interface DutyPeriod extends Stretch {
  readonly personId: string;
}

/** Every time of duty that touches [from, to), uncut, in order of time. `zone` is the site's IANA zone; an unknown one throws a RangeError. */
export function dutyPeriods(spans: readonly DutySpan[], zone: string, { fromMs, toMs }: Stretch): DutyPeriod[] {
  const dateOf = (ms: number) => Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(zone).toPlainDate();
  const last = dateOf(Math.ceil(toMs));
  const periods: DutyPeriod[] = [];
  // From two days before: a span may begin late in the evening before, and a zone may have left a day out.
  for (let date = dateOf(Math.floor(fromMs)).subtract({ days: 2 }); !isAfter(date, last); date = date.add({ days: 1 }))
    periods.push(...periodsOn(date, spans, zone));
  return periods
    .filter((period) => period.fromMs < toMs && period.toMs > fromMs)
    .sort((a, b) => a.fromMs - b.fromMs || a.toMs - b.toMs);
}

/** Who is on duty at an instant, in the order in which their duty began. Empty in a gap, and without a rota. */
export function onDutyAt(spans: readonly DutySpan[], zone: string, nowMs: number): string[] {
  const now = dutyPeriods(spans, zone, { fromMs: nowMs, toMs: nowMs + 1 });
  return [...new Set(now.map(({ personId }) => personId))];
}

/** The stretches of [from, to) in which nobody is on duty, in order. Without any rota there is no gap: everybody is on duty always. */
export function dutyGaps(spans: readonly DutySpan[], zone: string, { fromMs, toMs }: Stretch): Stretch[] {
  return spans.length === 0 ? [] : uncovered(dutyPeriods(spans, zone, { fromMs, toMs }), { fromMs, toMs });
}

export interface RotaGap extends Stretch {
  /** `nobody-reached`: those on duty have nothing to be told through. */
  readonly reason: 'nobody' | 'nobody-reached';
}

/** The gaps as those who wait for alerts feel them: also where nobody of those on duty can be reached. In order of time. */
export function rotaGaps(
  spans: readonly DutySpan[],
  isReached: (personId: string) => boolean,
  zone: string,
  stretch: Stretch,
): RotaGap[] {
  const nobody = dutyGaps(spans, zone, stretch);
  const reached = dutyPeriods(
    spans.filter(({ personId }) => isReached(personId)),
    zone,
    stretch,
  );
  const covered = [...reached, ...nobody].sort((a, b) => a.fromMs - b.fromMs || a.toMs - b.toMs);
  const mute = spans.length === 0 ? [] : uncovered(covered, stretch);
  return [
    ...nobody.map((gap) => ({ ...gap, reason: 'nobody' as const })),
    ...mute.map((gap) => ({ ...gap, reason: 'nobody-reached' as const })),
  ].sort((a, b) => a.fromMs - b.fromMs);
}

/** What of a stretch these, in order of their beginning, leave out. */
function uncovered(periods: readonly Stretch[], { fromMs, toMs }: Stretch): Stretch[] {
  const gaps: Stretch[] = [];
  let coveredMs = fromMs;
  for (const period of periods) {
    if (period.fromMs > coveredMs) gaps.push({ fromMs: coveredMs, toMs: period.fromMs });
    coveredMs = Math.max(coveredMs, period.toMs);
  }
  return coveredMs < toMs ? [...gaps, { fromMs: coveredMs, toMs }] : gaps;
}

function periodsOn(date: Temporal.PlainDate, spans: readonly DutySpan[], zone: string): DutyPeriod[] {
  return spans.flatMap(({ personId, weekday, from, to }) => {
    if (weekday !== date.dayOfWeek) return [];
    const stretch = stretchOn(date, { from, to }, zone);
    return stretch === null ? [] : [{ personId, ...stretch }];
  });
}

function isAfter(a: Temporal.PlainDate, b: Temporal.PlainDate): boolean {
  return Temporal.PlainDate.compare(a, b) > 0;
}
