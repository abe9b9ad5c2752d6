// The pure reducer of the alarms of one place: (state, event) → (state, effects). It sends nothing and stores nothing; the same code
// serves the live watch and a replay of the past, and chambers and the service itself: only the rules differ.

import { expireAcknowledgements } from './ask-anew.ts';
import { standingLevel } from './debounce.ts';
import { endWithBatch } from './end-with-batch.ts';
import { observeEntry } from './observe-entry.ts';
import { actOnRule, isRuleAct } from './out-of-service.ts';
import { calmOverruled, isOverruled } from './overruled.ts';
import { actOnAlarm, expireShelves } from './people-acts.ts';
import { chamberRules, ruleOf } from './rules/index.ts';
import { type Judgement, noLimits, type PlaceScene, type Rule, type RuleTraits } from './rules/rule.ts';
import { serviceRules } from './service/service-rules.ts';
import type { ServiceScene } from './service/service-scene.ts';
import { isSuppressed, suppressByDesign } from './suppress-by-design.ts';
import {
  type ChamberWatch,
  calmEntry,
  type Effect,
  isCalm,
  keyOf,
  outOfServiceOf,
  type Reduction,
  subjectIdOf,
  type WatchEntry,
  type WatchEvent,
} from './watch-state.ts';

/**
 * Takes one event into a chamber's watch. A repeated event changes nothing: an act answers with a `nothing` effect and its reason, a
 * scene with no effects. `observe` serves readings and ticks alike: it judges the scene by every rule. Only a replay gives other `rules`.
 */
export function reduce(state: ChamberWatch, event: WatchEvent, rules: readonly Rule[] = chamberRules): Reduction {
  return reduceBy(state, event, rules);
}

/** The same for the service itself, which is watched as one more place. */
export function reduceService(state: ChamberWatch, event: WatchEvent<ServiceScene>): Reduction {
  return reduceBy(state, event, serviceRules);
}

function reduceBy<S extends PlaceScene>(
  state: ChamberWatch,
  event: WatchEvent<S>,
  rules: readonly Rule<S>[],
): Reduction {
  if (event.type === 'observe') return observe(state, event.scene, rules);
  return isRuleAct(event) ? actOnRule(state, event) : actOnAlarm(state, event);
}

function observe<S extends PlaceScene>(before: ChamberWatch, scene: S, rules: readonly Rule<S>[]): Reduction {
  if (isStill(before, scene, rules)) return { state: before, effects: [] };
  const ended = endWithBatch(before, scene);
  const overruled = calmOverruled(ended.state, rules, scene.nowMs);
  const expired = expireShelves(overruled.state, scene.nowMs, (id) => isSuppressed(ruleOf(id), scene));
  const held = suppressByDesign(expired.state, scene);
  const effects: Effect[] = [ended, overruled, expired, held].flatMap((one) => one.effects);
  let { entries } = held.state;
  const standing = Object.values(entries).filter(({ memory }) => standingLevel(memory) > 0);
  for (const rule of rules) {
    if (isOverruled(held.state, rule)) continue;
    const isQuiet = isSuppressed(rule, scene) || outOfServiceOf(held.state, rule.id) !== null;
    for (const judgement of judge(held.state, rule, scene, standing)) {
      const key = keyOf(rule.id, subjectIdOf(judgement));
      const entry = entries[key] ?? calmEntry(rule.id, judgement);
      const outcome = observeEntry(entry, rule, judgement, scene, isQuiet);
      if (outcome.entry === entry) continue;
      entries = { ...entries, [key]: outcome.entry };
      effects.push(...outcome.effects, { type: 'entry-changed', key, entry: outcome.entry });
    }
  }
  // Last, so that what is over with this scene asks nobody any more.
  const asked = expireAcknowledgements(entries === before.entries ? before : { ...before, entries }, scene.nowMs);
  return { state: asked.state, effects: [...effects, ...asked.effects] };
}

/** Nothing stands or is pending, and no rule sees anything: nearly all scenes, so it is looked for first. Then nothing below changes anything. */
function isStill<S extends PlaceScene>({ entries }: ChamberWatch, scene: S, rules: readonly Rule<S>[]): boolean {
  for (const key in entries) {
    const entry = entries[key];
    if (entry !== undefined && !isCalm(entry)) return false;
  }
  for (const rule of rules) {
    for (const { level } of rule.judge(scene, nothingHeld)) if (level !== 0) return false;
  }
  return true;
}

const nothingHeld = () => 0 as const;

function judge<S extends PlaceScene>(
  state: ChamberWatch,
  rule: Rule<S>,
  scene: S,
  standing: readonly WatchEntry[],
): readonly Judgement[] {
  const held = (subjectId: string | null) => {
    const entry = state.entries[keyOf(rule.id, subjectId)];
    return entry === undefined ? 0 : standingLevel(entry.memory);
  };
  const judgements = rule.judge(scene, held);
  return standing.length === 0 ? judgements : [...judgements, ...goneSubjects(standing, rule, judgements)];
}

// A probe that was moved or taken away, or a check that is answered, leaves no judgement behind: what it said is over.
function goneSubjects(
  standing: readonly WatchEntry[],
  rule: RuleTraits,
  judgements: readonly Judgement[],
): Judgement[] {
  const isGone = (entry: WatchEntry) =>
    entry.rule === rule.id && !judgements.some((one) => subjectIdOf(one) === subjectIdOf(entry));
  return standing.filter(isGone).map(({ probeId, about }) => {
    const subject = about === undefined ? { probeId } : { probeId, about };
    return { ...subject, level: 0, value: null, limits: noLimits };
  });
}
