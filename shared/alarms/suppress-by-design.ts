// Suppression by design (IEC 62682): alarms of the air go quiet while the air is disturbed on purpose, alarms of silence while no reading can
// come in, and come back by their condition.
import type { Alarm } from './alarm.ts';
import { askNow } from './ask-anew.ts';
import { standingLevel } from './debounce.ts';
import { nextState } from './life-cycle.ts';
import { ruleOf } from './rules/index.ts';
import type { PlaceScene, RuleTraits } from './rules/rule.ts';
import type { ChamberWatch, Effect, Reduction, WatchEntry } from './watch-state.ts';

/** True while a rule must not begin an occurrence. */
export function isSuppressed(
  { isSuppressible, needsReadings }: Pick<RuleTraits, 'isSuppressible' | 'needsReadings'>,
  { suppression, isCutOff }: Pick<PlaceScene, 'suppression' | 'isCutOff'>,
): boolean {
  return (isSuppressible === true && suppression != null) || (needsReadings === true && isCutOff === true);
}

/** Suppresses what must be quiet now and brings back what must not be any more. Shelved and out-of-service alarms stay as they are. */
export function suppressByDesign(state: ChamberWatch, scene: PlaceScene): Reduction {
  let { entries } = state;
  const effects: Effect[] = [];
  for (const [key, before] of Object.entries(state.entries)) {
    const changed = before.alarm === null ? null : changeOf(before, before.alarm, scene);
    if (changed === null) continue;
    entries = { ...entries, [key]: changed.entry };
    effects.push(changed.effect, { type: 'entry-changed', key, entry: changed.entry });
  }
  return effects.length === 0 ? { state, effects } : { state: { ...state, entries }, effects };
}

function changeOf(entry: WatchEntry, alarm: Alarm, scene: PlaceScene): { entry: WatchEntry; effect: Effect } | null {
  const isQuiet = isSuppressed(ruleOf(entry.rule), scene);
  const state = nextState(alarm.state, isQuiet ? 'suppress' : 'unsuppress', standingLevel(entry.memory) > 0);
  if (state === alarm.state) return null;
  // Back with its condition standing it asks anew, whoever had it before.
  const changed = {
    ...alarm,
    state,
    ...(state === 'unacknowledged' && askNow(scene.nowMs, 'raised')),
  };
  return {
    entry: { ...entry, alarm: state === 'normal' ? null : changed },
    effect: {
      type: 'alarm-changed',
      change: isQuiet ? 'suppressed' : 'unsuppressed',
      atMs: scene.nowMs,
      from: alarm.state,
      alarm: changed,
      person: null,
      note: isQuiet ? sayCause(scene) : '',
    },
  };
}

function sayCause({ suppression, isCutOff }: PlaceScene): string {
  if (isCutOff === true) return 'no reading can come in';
  return suppression?.cause === 'working' ? 'somebody is working in the tent' : 'a step of venting settles';
}
