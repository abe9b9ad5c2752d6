// An alarm in words: one sentence that says what, how far and since when, and what to do first. Used by screen, phone and record alike.
import { HEAT_AHEAD } from '../forecast/heat-ahead.ts';
import { sayAhead } from '../forecast/say-ahead.ts';
import { MINUTE_MS } from '../units.ts';
import type { Alarm, RuleId } from './alarm.ts';

const shapes: Record<RuleId, string> = {
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

type Wording = (alarm: Alarm, minutes: string, nowMs: number) => string;

const sentences: Record<RuleId, Wording> = {
  // The time counts from the first limit, so the outer one is not named with it.
  heat: (alarm, minutes) =>
    alarm.level === 2
      ? `Far too hot: ${celsius(alarm.value)}, above ${number(alarm.limit)}; hot for ${minutes}`
      : `Hot: ${celsius(alarm.value)}, limit ${number(alarm.limit)} for ${minutes}`,
  cold: (alarm, minutes) => `Cold: ${celsius(alarm.value)}, low limit ${number(alarm.limit)} for ${minutes}`,
  dry: (alarm, minutes) =>
    alarm.level === 2
      ? `Far too dry: ${percent(alarm.value)}, below ${number(alarm.limit)}; drying for ${minutes}`
      : `Drying: ${percent(alarm.value)}, low limit ${number(alarm.limit)} for ${minutes}`,
  wet: (alarm, minutes) => `Still wet: ${percent(alarm.value)}, high limit ${number(alarm.limit)} for ${minutes}`,
  'silent-probe': (_, minutes) => `Probe silent for ${minutes}`,
  'silent-chamber': (_, minutes) => `No temperature to trust from this chamber for ${minutes}`,
  'heat-ahead': (alarm, _, nowMs) => `Heat ahead: ${celsius(alarm.value)}, ${sayExpected(alarm, nowMs)}`,
  vpd: (alarm, minutes) => `Air draws too much water: ${kpa(alarm.value)}, limit ${kpa(alarm.limit)} for ${minutes}`,
  'suspect-probe': (alarm, minutes) =>
    alarm.level === 2
      ? `Probe in doubt: it says ${celsius(alarm.value)}, not believed for ${minutes}`
      : `Probe in doubt, for ${minutes}`,
  'check-overdue': (alarm, minutes) => `Check overdue, for ${minutes}: ${question(alarm)}`,
  'check-failed': (alarm, minutes) => `Check answered no, ${minutes} ago: ${question(alarm)}`,
  'plan-late': (alarm, minutes) =>
    `Venting is late: still ${percent(alarm.value)}, limit ${number(alarm.limit)} for ${minutes}`,
};

const advice: Record<RuleId, string> = {
  heat: 'Shade now. Open the gap a hand’s width and mist the film.',
  cold: 'Close the gap and check the heating of the house.',
  // A hot tent may have to stay open: then mist is what is left.
  dry: 'Mist now; keep the gap as small as the heat allows. Look whether the scions stand.',
  wet: 'Open the gap to the step of today, if the scions stand erect.',
  'silent-probe': 'Look at the probe: power, cable, water in the plug.',
  'silent-chamber': 'Go and look at the tent: nobody is measuring it. Then see to the probe.',
  'heat-ahead': 'Shade now, before it gets hot; look whether the fogger runs.',
  vpd: 'Mist lightly and look for an open seam; do not let it get hotter.',
  'suspect-probe': 'Hold another instrument beside the probe; if it is wet, let it dry before you trust it.',
  'check-overdue': 'Go and look, then answer the check.',
  'check-failed': 'Go and see, and do what the plan says for this check.',
  'plan-late': 'Open the gap to the step of today if the scions stand erect; if they do not, hold the plan.',
};

/** The sentence of an alarm as it stands at `nowMs`, e.g. "▲ Hot: 28.6 °C, limit 28 for 4 min". Once returned it says how long it lasted. */
export function sayAlarm(alarm: Alarm, nowMs: number): string {
  const minutes = sayMinutes((alarm.returnedMs ?? nowMs) - alarm.sinceMs);
  if (alarm.level === 0) return `${shapes[alarm.rule]} ${sayOver(alarm, minutes)}`;
  return `${shapes[alarm.rule]} ${sentences[alarm.rule](alarm, minutes, nowMs)}`;
}

/** What to do first. */
export function adviseOn(rule: RuleId): string {
  return advice[rule];
}

const names: Record<RuleId, string> = {
  heat: 'Heat',
  cold: 'Cold',
  dry: 'Dryness',
  wet: 'Wetness',
  'silent-probe': 'Probe silence',
  'silent-chamber': 'Chamber silence',
  'heat-ahead': 'Heat ahead',
  vpd: 'Vapour deficit',
  'suspect-probe': 'Probe doubt',
  'check-overdue': 'Overdue check',
  'check-failed': 'Bad check',
  'plan-late': 'Late venting',
};

/** What to do first about this alarm: of a bad check the profile's own words. */
export function adviseOnAlarm({ rule, about }: Pick<Alarm, 'rule' | 'about'>): string {
  return rule === 'check-failed' && about !== undefined ? about.ifNo : advice[rule];
}

/** The name of a rule, for lists. */
export function nameRule(rule: RuleId): string {
  return names[rule];
}

function sayOver(alarm: Alarm, minutes: string): string {
  const peak = alarm.peak === null ? '' : `, ${sayPeak(alarm.rule, alarm.peak)} at worst`;
  return `${names[alarm.rule]} is over: it lasted ${minutes}${peak}`;
}

/** Told from the instant that is expected, so that it stays true while the message is on its way. */
function sayExpected({ expected, limit }: Alarm, nowMs: number): string {
  const minutes = (ms: number | null) => (ms === null ? null : (ms - nowMs) / MINUTE_MS);
  const [about, low, high] = [expected?.atMs, expected?.earliestMs, expected?.latestMs].map((ms) =>
    minutes(ms ?? null),
  );
  if (about === null || about === undefined)
    return `may be past ${number(limit)} °C in ${HEAT_AHEAD.horizonMinutes} min`;
  return sayAhead(`${number(limit)} °C`, { minutes: about, low: low ?? null, high: high ?? null });
}

function sayPeak(rule: RuleId, peak: number): string {
  if (rule === 'vpd') return kpa(peak);
  return rule === 'dry' || rule === 'wet' || rule === 'plan-late' ? percent(peak) : celsius(peak);
}

function question({ about }: Alarm): string {
  return `“${about?.question ?? 'not known'}”`;
}

function sayMinutes(ms: number): string {
  const minutes = Math.max(0, Math.round(ms / MINUTE_MS));
  if (minutes < 1) return 'less than a minute';
  if (minutes < 120) return `${minutes} min`;
  return `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
}

function celsius(value: number | null): string {
  return value === null ? 'not known' : `${value.toFixed(1)} °C`;
}

function percent(value: number | null): string {
  return value === null ? 'not known' : `${value.toFixed(0)} %`;
}

/** Two decimals: a probe does not tell finer. */
function kpa(value: number | null): string {
  return value === null ? 'not known' : `${value.toFixed(2)} kPa`;
}

function number(value: number | null): string {
  return value === null ? '–' : String(Math.round(value * 10) / 10);
}
