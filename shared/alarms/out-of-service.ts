// A rule of a chamber taken out of service by a person, with a reason, and returned: for maintenance, without a time limit, plainly shown.
import { askNow } from './ask-anew.ts';
import { standingLevel } from './debounce.ts';
import { nextState } from './life-cycle.ts';
import {
  type ChamberWatch,
  calmEntry,
  type Effect,
  keyOf,
  outOfServiceOf,
  type Reduction,
  type WatchEntry,
  type WatchEvent,
} from './watch-state.ts';
import type { WhyNothing } from './why-nothing.ts';

type RuleAct = Extract<WatchEvent, { type: 'take-out-of-service' | 'return-to-service' }>;

/** Tells an act on a rule from one on an alarm. */
export function isRuleAct(event: Exclude<WatchEvent, { type: 'observe' }>): event is RuleAct {
  return event.type === 'take-out-of-service' || event.type === 'return-to-service';
}

/** Applies the act to the rule and to every alarm of it; one without effect answers with its reason and changes nothing. */
export function actOnRule(state: ChamberWatch, act: RuleAct): Reduction {
  const known = outOfServiceOf(state, act.rule);
  const isTaking = act.type === 'take-out-of-service';
  if (isTaking && known !== null) return nothing(state, { why: 'rule-taken-already', person: known.person });
  if (!isTaking && known === null) return nothing(state, { why: 'rule-in-service' });
  const ruleKey = keyOf(act.rule, null);
  const entries = { [ruleKey]: calmEntry(act.rule, { probeId: null }), ...state.entries };
  const effects: Effect[] = [];
  for (const [key, before] of Object.entries(entries)) {
    if (before.rule !== act.rule || (before.alarm === null && key !== ruleKey)) continue;
    const moved = moveAlarm(before, act);
    const entry = key === ruleKey ? mark(moved.entry, act) : moved.entry;
    entries[key] = entry;
    effects.push(...moved.effects, { type: 'entry-changed', key, entry });
  }
  return { state: { ...state, entries }, effects };
}

function mark({ outOfService: _, ...entry }: WatchEntry, act: RuleAct): WatchEntry {
  if (act.type === 'return-to-service') return entry;
  return { ...entry, outOfService: { person: act.person, atMs: act.nowMs, reason: act.reason } };
}

function moveAlarm(entry: WatchEntry, act: RuleAct): { entry: WatchEntry; effects: Effect[] } {
  const { alarm } = entry;
  if (alarm === null) return { entry, effects: [] };
  const isTaking = act.type === 'take-out-of-service';
  const state = nextState(alarm.state, act.type, standingLevel(entry.memory) > 0);
  const changed = {
    ...alarm,
    state,
    shelvedUntilMs: null,
    shelvedReason: null,
    ...(state === 'unacknowledged' && askNow(act.nowMs, 'raised')),
  };
  const effect: Effect = {
    type: 'alarm-changed',
    change: isTaking ? 'taken-out-of-service' : 'returned-to-service',
    atMs: act.nowMs,
    from: alarm.state,
    alarm: changed,
    person: act.person,
    note: isTaking ? act.reason : '',
  };
  return { entry: { ...entry, alarm: state === 'normal' ? null : changed }, effects: [effect] };
}

function nothing(state: ChamberWatch, reason: WhyNothing): Reduction {
  return { state, effects: [{ type: 'nothing', reason }] };
}
