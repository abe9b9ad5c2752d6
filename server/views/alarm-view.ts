// An alarm as it is sent to people: with names, and with value and limit as they are now while the condition stands.
import { type Alarm, SERVICE_ID } from '../../shared/alarms/alarm.ts';
import { chamberRules } from '../../shared/alarms/rules/index.ts';
import type { Judgement } from '../../shared/alarms/rules/rule.ts';
import { adviseOnAlarm, sayAlarm } from '../../shared/alarms/say-alarm.ts';
import { serviceRules } from '../../shared/alarms/service/service-rules.ts';
import type { OutageFacts } from '../../shared/alarms/service-facts.ts';
import { subjectIdOf } from '../../shared/alarms/watch-state.ts';
import type { AlarmView } from '../../shared/api/alarms.ts';
import { sayFinding } from '../../shared/finding.ts';
import { plainEnglish } from '../../shared/plain-english.ts';
import { utcText } from '../../shared/units.ts';
import type { Watch } from '../watch/watch.ts';

const priorityOrder = { critical: 0, high: 1, medium: 2, low: 3 } as const;
const stateOrder = {
  unacknowledged: 0,
  'returned-unacknowledged': 2,
  acknowledged: 1,
  shelved: 3,
  suppressed: 4,
  'out-of-service': 5,
  normal: 6,
} as const;

/** Sorts alarms worst first: what nobody has taken, then by priority, then the oldest. */
export function worstFirst(a: AlarmView, b: AlarmView): number {
  const byState = stateOrder[a.state] - stateOrder[b.state];
  return byState || priorityOrder[a.priority] - priorityOrder[b.priority] || a.occurredAt.localeCompare(b.occurredAt);
}

/** `batchCode` is asked for because a past alarm's batch may be finished and no longer in the watch. */
export function viewAlarm(stored: Alarm, watch: Watch, nowMs: number, batchCode: string | null): AlarmView {
  const alarm = withValueNow(stored, watch, nowMs);
  const probe = alarm.probeId === null ? undefined : watch.probes.byId(alarm.probeId);
  const { id, chamberId, batchId, rule, probeId, state, level, priority, limit, value, peak, acknowledgedBy } = alarm;
  return {
    ...{ id, batchId, rule, probeId, state, level, priority, limit, value, peak, acknowledgedBy },
    chamberId: chamberId === SERVICE_ID ? null : chamberId,
    chamberName: watch.chamberName(chamberId),
    batchCode,
    probeName: probe?.probe.name ?? null,
    since: utcText(alarm.sinceMs),
    occurredAt: utcText(alarm.occurredMs),
    peakAt: timeText(alarm.peakMs),
    acknowledgedAt: timeText(alarm.acknowledgedMs),
    returnedAt: timeText(alarm.returnedMs),
    shelvedUntil: timeText(alarm.shelvedUntilMs),
    shelvedReason: alarm.shelvedReason,
    about: alarm.about ?? null,
    expected: viewExpected(alarm.expected),
    service: viewServiceFacts(alarm.service),
    sentence: sayAlarm(alarm, nowMs, plainEnglish),
    advice: adviseOnAlarm(alarm, plainEnglish),
  };
}

function viewExpected(expected: Alarm['expected']): AlarmView['expected'] {
  if (expected === undefined) return null;
  const { atMs, earliestMs, latestMs, passedMs = null } = expected;
  return {
    ...{ at: timeText(atMs), earliest: timeText(earliestMs), latest: timeText(latestMs) },
    passed: timeText(passedMs),
  };
}

function viewServiceFacts(facts: Alarm['service']): AlarmView['service'] {
  if (facts === undefined) return null;
  const { trouble, blind = [], outage } = facts;
  return {
    trouble: trouble === undefined ? null : sayFinding(trouble, plainEnglish.words),
    finding: trouble === undefined ? null : { key: trouble.key, args: [...trouble.args] },
    blind: [...blind],
    outage: outage === undefined ? null : viewOutage(outage),
  };
}

function viewOutage({ fromMs, toMs, cause, chambers, inForce }: OutageFacts) {
  return { cause, from: utcText(fromMs), to: utcText(toMs), chambers: [...chambers], inForce: [...inForce] };
}

/** RFC 3339 text of an instant, null staying null. */
export function timeText(ms: number | null): string | null {
  return ms === null ? null : utcText(ms);
}

/** While the condition stands, value and limit are those of now: both move on after the alarm was written. */
function withValueNow(alarm: Alarm, watch: Watch, nowMs: number): Alarm {
  const { level } = alarm;
  if (level === 0 || alarm.state === 'normal') return alarm;
  const now = judgeNow(alarm, watch, nowMs)?.find((one) => subjectIdOf(one) === subjectIdOf(alarm));
  const about = now?.about ?? alarm.about;
  const expected = now?.expected?.() ?? alarm.expected;
  return {
    ...alarm,
    ...(about !== undefined && { about }),
    ...(expected !== undefined && { expected }),
    ...(now?.service !== undefined && { service: now.service }),
    value: now?.value ?? alarm.value,
    limit: now?.limits[level - 1] ?? alarm.limit,
  };
}

/** What the alarm's rule sees now; undefined when its place is watched no more. */
function judgeNow({ chamberId, rule, level }: Alarm, watch: Watch, nowMs: number): Judgement[] | undefined {
  const held = () => level;
  if (chamberId === SERVICE_ID) {
    const scene = watch.serviceScene();
    return scene === null ? undefined : serviceRules.find(({ id }) => id === rule)?.judge(scene, held);
  }
  const chamber = watch.chamber(chamberId);
  if (chamber === undefined) return undefined;
  const scene = watch.scene(chamber, watch.probes.inChamber(chamberId), nowMs);
  return chamberRules.find(({ id }) => id === rule)?.judge(scene, held);
}
