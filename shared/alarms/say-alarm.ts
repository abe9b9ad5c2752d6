// An alarm in words: one sentence that says what, how far and since when, and what to do first. Used by screen, phone and record alike,
// each in the language and unit of who hears it.
import { HEAT_AHEAD } from '../forecast/heat-ahead.ts';
import { sayAhead } from '../forecast/say-ahead.ts';
import { sayStandardText } from '../healing/say-standard-text.ts';
import { saySpan } from '../say-span.ts';
import { type Saying, sayKpa, sayPercent, sayShort, sayTemperature, sayTemperatureLimit } from '../saying.ts';
import { MINUTE_MS } from '../units.ts';
import { type Alarm, type ChamberRuleId, instantRules, isServiceRule, type RuleId } from './alarm.ts';
import { serviceShapes, serviceWordings } from './service/say-service-alarm.ts';

/** Of an alarm, what its words are made of. */
export type SaidAlarm = Pick<
  Alarm,
  'rule' | 'level' | 'limit' | 'value' | 'peak' | 'sinceMs' | 'returnedMs' | 'about' | 'expected' | 'service'
>;

/** An alarm in parts, for those who put a title and a line together themselves. */
export interface AlarmParts {
  readonly shape: string;
  /** What is so, such as "Hot: 28.6 °C" or "Heat is over". */
  readonly what: string;
  /** How far and for how long, such as "limit 28 for 4 min"; may be empty. */
  readonly howFar: string;
}

const shapes: Record<RuleId, string> = {
  ...serviceShapes,
  heat: '▲',
  cold: '▼',
  dry: '▽',
  wet: '△',
  'silent-probe': '□',
  'silent-chamber': '■',
  'heat-ahead': '↑',
  vpd: '◇',
  'suspect-probe': '◧',
  'check-overdue': '○',
  'check-failed': '●',
  'plan-late': '▷',
};

/** An alarm stands on until its value has stayed inside for a while: until then it must not be called outside. */
function isBelow(one: number | null, other: number | null): boolean {
  return one !== null && other !== null && one < other;
}

type Wording = (alarm: SaidAlarm, saying: Saying, span: string, nowMs: number) => readonly [what: string, far: string];

const wordings: Record<ChamberRuleId, Wording> = {
  // The time counts from the first limit, so the outer one is not named with it.
  heat({ level, value, limit }, saying, span) {
    const { alarms } = saying.words;
    const [said, bound] = [sayTemperature(value, saying), sayTemperatureLimit(limit, saying)];
    const far = level === 2 ? alarms.hotFor(bound, span) : alarms.limitFor(bound, span);
    const what = level === 2 ? alarms.farTooHot(said) : alarms.hot(said);
    return [what, isBelow(value, limit) ? alarms.backBelow(bound, span) : far];
  },
  cold({ value, limit }, saying, span) {
    const { alarms } = saying.words;
    const bound = sayTemperatureLimit(limit, saying);
    const far = isBelow(limit, value) ? alarms.backAbove(bound, span) : alarms.lowLimitFor(bound, span);
    return [alarms.cold(sayTemperature(value, saying)), far];
  },
  dry({ level, value, limit }, saying, span) {
    const { alarms } = saying.words;
    const [said, bound] = [sayPercent(value, saying), sayShort(limit, saying)];
    const far = level === 2 ? alarms.dryingFor(bound, span) : alarms.lowLimitFor(bound, span);
    const what = level === 2 ? alarms.farTooDry(said) : alarms.drying(said);
    return [what, isBelow(limit, value) ? alarms.backAbove(bound, span) : far];
  },
  wet({ value, limit }, saying, span) {
    const { alarms } = saying.words;
    const bound = sayShort(limit, saying);
    const far = isBelow(value, limit) ? alarms.backBelow(bound, span) : alarms.highLimitFor(bound, span);
    return [alarms.stillWet(sayPercent(value, saying)), far];
  },
  'silent-probe': (_, { words }, span) => [words.alarms.probeSilent(span), ''],
  'silent-chamber': (_, { words }, span) => [words.alarms.chamberSilent(span), ''],
  'heat-ahead'(alarm, saying, _, nowMs) {
    const { alarms } = saying.words;
    const said = sayTemperature(alarm.value, saying);
    return hasCome(alarm)
      ? [alarms.heatHere(said), sayPassed(alarm, nowMs, saying)]
      : [alarms.heatAhead(said), sayExpected(alarm, nowMs, saying)];
  },
  vpd({ value, limit }, saying, span) {
    const { alarms } = saying.words;
    const bound = sayKpa(limit, saying);
    const far = isBelow(value, limit) ? alarms.backBelow(bound, span) : alarms.limitFor(bound, span);
    return [alarms.drawsWater(sayKpa(value, saying)), far];
  },
  'suspect-probe'({ level, value }, saying, span) {
    const { alarms } = saying.words;
    return level === 2
      ? [alarms.probeInDoubtSays(sayTemperature(value, saying)), alarms.notBelievedFor(span)]
      : [alarms.probeInDoubt, alarms.doubtedFor(span)];
  },
  'check-overdue': (alarm, saying, span) => [
    saying.words.alarms.checkOverdue,
    saying.words.alarms.overdueFor(span, question(alarm, saying)),
  ],
  'check-failed': (alarm, saying, span) => [
    saying.words.alarms.checkAnsweredNo,
    saying.words.alarms.answeredAgo(span, question(alarm, saying)),
  ],
  'plan-late': ({ value, limit }, saying, span) => [
    saying.words.alarms.ventingLate(sayPercent(value, saying)),
    saying.words.alarms.limitFor(sayShort(limit, saying), span),
  ],
};

/** The alarm as it stands at `nowMs`, in parts. Once returned it says how long it lasted. */
export function alarmParts(alarm: SaidAlarm, nowMs: number, saying: Saying): AlarmParts {
  const span = saySpan((alarm.returnedMs ?? nowMs) - alarm.sinceMs, saying);
  const shape = shapes[alarm.rule];
  // What happened at an instant is said in the same words afterwards.
  if (alarm.level > 0 || instantRules.includes(alarm.rule)) {
    const [what, howFar] = sayStanding(alarm, saying, span, nowMs);
    return { shape, what, howFar };
  }
  const { alarms } = saying.words;
  const howFar =
    alarm.peak === null ? alarms.lasted(span) : alarms.lastedWithPeak(span, sayPeak(alarm.rule, alarm.peak, saying));
  return { shape, what: alarms.over(nameRule(alarm.rule, saying)), howFar };
}

function sayStanding(alarm: SaidAlarm, saying: Saying, span: string, nowMs: number): readonly [string, string] {
  const { rule } = alarm;
  return isServiceRule(rule) ? serviceWordings[rule](alarm, saying, span) : wordings[rule](alarm, saying, span, nowMs);
}

/** The sentence of an alarm as it stands at `nowMs`, e.g. "▲ Hot: 28.6 °C, limit 28 for 4 min". */
export function sayAlarm(alarm: SaidAlarm, nowMs: number, saying: Saying): string {
  const { shape, what, howFar } = alarmParts(alarm, nowMs, saying);
  if (howFar === '') return `${shape} ${what}`;
  return `${shape} ${what}${alarm.level === 0 ? ': ' : ', '}${howFar}`;
}

/** What to do first about an alarm of this rule. */
export function adviseOn(rule: RuleId, { words }: Saying): string {
  return words.alarms.advice[rule];
}

/** What to do first about this alarm: of a bad check the profile's own words; of heat that was warned of and has come, what heat asks for. */
export function adviseOnAlarm(
  alarm: Pick<SaidAlarm, 'rule' | 'level' | 'value' | 'limit' | 'about'>,
  saying: Saying,
): string {
  const { rule, about } = alarm;
  if (rule === 'heat-ahead' && hasCome(alarm)) return adviseOn('heat', saying);
  return rule === 'check-failed' && about !== undefined ? sayStandardText(about.ifNo, saying) : adviseOn(rule, saying);
}

/** The name of a rule, for lists. */
export function nameRule(rule: RuleId, { words }: Saying): string {
  return words.names.rules[rule];
}

/** True while what a warning foretold is there, and heat itself waits for its delay. */
function hasCome({ level, value, limit }: Pick<SaidAlarm, 'level' | 'value' | 'limit'>): boolean {
  return level > 0 && value !== null && limit !== null && value > limit;
}

function sayPassed({ expected, limit }: SaidAlarm, nowMs: number, saying: Saying): string {
  const { alarms } = saying.words;
  const bound = `${sayTemperatureLimit(limit, saying)} ${saying.temperatureUnit}`;
  const passedMs = expected?.passedMs ?? null;
  return passedMs === null ? alarms.aboveAlready(bound) : alarms.aboveFor(bound, saySpan(nowMs - passedMs, saying));
}

/** Told from the instant that is expected, so that it stays true while the message is on its way. */
function sayExpected({ expected, limit }: SaidAlarm, nowMs: number, saying: Saying): string {
  const bound = `${sayTemperatureLimit(limit, saying)} ${saying.temperatureUnit}`;
  const minutes = (ms: number | null) => (ms === null ? null : (ms - nowMs) / MINUTE_MS);
  const [about, low, high] = [expected?.atMs, expected?.earliestMs, expected?.latestMs].map((ms) =>
    minutes(ms ?? null),
  );
  if (about === null || about === undefined) return saying.words.alarms.mayPass(bound, HEAT_AHEAD.horizonMinutes);
  return sayAhead(bound, { minutes: about, low: low ?? null, high: high ?? null }, saying);
}

function sayPeak(rule: RuleId, peak: number, saying: Saying): string {
  if (rule === 'vpd') return sayKpa(peak, saying);
  return rule === 'dry' || rule === 'wet' || rule === 'plan-late'
    ? sayPercent(peak, saying)
    : sayTemperature(peak, saying);
}

function question({ about }: SaidAlarm, saying: Saying): string {
  const { alarms } = saying.words;
  if (about === undefined) return alarms.notKnown;
  const asked = sayStandardText(about.question, saying);
  return about.more === undefined ? asked : alarms.withMore(asked, about.more);
}
