// What people do to an alarm: acknowledge, shelve with a time and reason, unshelve; and shelves that run out by themselves.
import type { Alarm, RuleId } from './alarm.ts';
import { askNow } from './ask-anew.ts';
import { standingLevel } from './debounce.ts';
import { type LifeCycleEvent, nextState } from './life-cycle.ts';
import type { AlarmChange, ChamberWatch, Effect, Reduction, WatchEntry, WatchEvent, WatchKey } from './watch-state.ts';
import type { WhyNothing } from './why-nothing.ts';

type Act = Extract<WatchEvent, { alarmId: string }>;

const changeOf: Record<Act['type'], AlarmChange> = {
  acknowledge: 'acknowledged',
  shelve: 'shelved',
  unshelve: 'unshelved',
};

/** Applies a person's act. An act without effect (already acknowledged, already over) answers with its reason and changes nothing. */
export function actOnAlarm(state: ChamberWatch, act: Act): Reduction {
  const found = Object.entries(state.entries).find(([, entry]) => entry.alarm?.id === act.alarmId);
  if (found === undefined || found[1].alarm === null) return nothing(state, { why: 'alarm-over' });
  const [key, entry] = found;
  const outcome = apply(entry, found[1].alarm, act);
  return outcome === null ? nothing(state, noEffect(found[1].alarm, act)) : replace(state, key, outcome);
}

/**
 * Shelves whose time is over come back: to unacknowledged when the condition still stands, else to normal. One whose rule `isHeld` quiet
 * waits for the end of that.
 */
export function expireShelves(state: ChamberWatch, nowMs: number, isHeld: (rule: RuleId) => boolean): Reduction {
  let reduction: Reduction = { state, effects: [] };
  for (const { rule, alarm } of Object.values(state.entries)) {
    if (alarm?.state !== 'shelved' || (alarm.shelvedUntilMs ?? 0) > nowMs || isHeld(rule)) continue;
    const next = actOnAlarm(reduction.state, { type: 'unshelve', alarmId: alarm.id, person: null, nowMs });
    reduction = { state: next.state, effects: [...reduction.effects, ...next.effects] };
  }
  return reduction;
}

function apply(entry: WatchEntry, alarm: Alarm, act: Act): { entry: WatchEntry; effects: Effect[] } | null {
  const event: LifeCycleEvent = act.type;
  const state = nextState(alarm.state, event, standingLevel(entry.memory) > 0);
  if (state === alarm.state) return null;
  const changed = { ...alarm, state, ...detailsOf(act), ...(isAnew(act, state) && askNow(act.nowMs, 'raised')) };
  const effect: Effect = {
    type: 'alarm-changed',
    change: changeOf[act.type],
    atMs: act.nowMs,
    from: alarm.state,
    alarm: changed,
    person: act.person,
    note: act.type === 'shelve' ? act.reason : '',
  };
  return { entry: { ...entry, alarm: state === 'normal' ? null : changed }, effects: [effect] };
}

/** Back from the shelf with its condition standing it asks anew, whoever had it before. */
function isAnew(act: Act, state: Alarm['state']): boolean {
  return act.type === 'unshelve' && state === 'unacknowledged';
}

function detailsOf(act: Act): Partial<Alarm> {
  if (act.type === 'acknowledge') return { acknowledgedMs: act.nowMs, acknowledgedBy: act.person };
  if (act.type === 'shelve') return { shelvedUntilMs: act.untilMs, shelvedReason: act.reason };
  return { shelvedUntilMs: null, shelvedReason: null };
}

function noEffect(alarm: Alarm, act: Act): WhyNothing {
  if (act.type === 'acknowledge' && alarm.state === 'acknowledged')
    return { why: 'acknowledged-already', person: alarm.acknowledgedBy ?? '' };
  return { why: 'no-such-step', state: alarm.state };
}

function replace(state: ChamberWatch, key: WatchKey, outcome: { entry: WatchEntry; effects: Effect[] }): Reduction {
  const effects: Effect[] = [...outcome.effects, { type: 'entry-changed', key, entry: outcome.entry }];
  return { state: { ...state, entries: { ...state.entries, [key]: outcome.entry } }, effects };
}

function nothing(state: ChamberWatch, reason: WhyNothing): Reduction {
  return { state, effects: [{ type: 'nothing', reason }] };
}
