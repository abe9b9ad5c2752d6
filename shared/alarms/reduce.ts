// The pure reducer of a chamber's alarms: (state, event) → (state, effects). It sends nothing and stores nothing; the same code
// serves the live watch and a replay of the past.

import { standingLevel } from './debounce.ts';
import { endWithBatch } from './end-with-batch.ts';
import { observeEntry } from './observe-entry.ts';
import { actOnAlarm, expireShelves } from './people-acts.ts';
import { allRules } from './rules/index.ts';
import { type Judgement, noLimits, type Rule, type Scene } from './rules/rule.ts';
import { isSuppressed, suppressByDesign } from './suppress-by-design.ts';
import {
  type ChamberWatch,
  calmEntry,
  type Effect,
  keyOf,
  type Reduction,
  type WatchEntry,
  type WatchEvent,
} from './watch-state.ts';

/**
 * Takes one event into a chamber's watch. A repeated event changes nothing: an act answers with a `nothing` effect and its reason, a
 * scene with no effects. `observe` serves readings and ticks alike: it judges the scene by every rule.
 */
export function reduce(state: ChamberWatch, event: WatchEvent): Reduction {
  return event.type === 'observe' ? observe(state, event.scene) : actOnAlarm(state, event);
}

function observe(before: ChamberWatch, scene: Scene): Reduction {
  const ended = endWithBatch(before, scene);
  const suppressed = suppressByDesign(ended.state, scene.nowMs);
  const { state, effects: expired } = expireShelves(suppressed.state, scene.nowMs);
  const effects: Effect[] = [...ended.effects, ...suppressed.effects, ...expired];
  let { entries } = state;
  for (const rule of allRules) {
    if (isSuppressed(state, rule)) continue;
    for (const judgement of judge(state, rule, scene)) {
      const key = keyOf(rule.id, judgement.probeId);
      const entry = entries[key] ?? calmEntry(rule.id, judgement.probeId);
      const outcome = observeEntry(entry, rule, judgement, scene);
      if (outcome.entry === entry) continue;
      entries = { ...entries, [key]: outcome.entry };
      effects.push(...outcome.effects, { type: 'entry-changed', key, entry: outcome.entry });
    }
  }
  return { state: { ...before, entries }, effects };
}

function judge(state: ChamberWatch, rule: Rule, scene: Scene): Judgement[] {
  const held = (probeId: string | null) => {
    const entry = state.entries[keyOf(rule.id, probeId)];
    return entry === undefined ? 0 : standingLevel(entry.memory);
  };
  const judgements = rule.judge(scene, held);
  const gone = goneProbes(state, rule, judgements);
  return gone.length === 0 ? judgements : [...judgements, ...gone];
}

// A probe that was moved or taken away leaves no judgement behind: what it said is over.
function goneProbes(state: ChamberWatch, rule: Rule, judgements: readonly Judgement[]): Judgement[] {
  const isGone = ({ rule: id, probeId, memory }: WatchEntry) =>
    id === rule.id && standingLevel(memory) > 0 && !judgements.some((one) => one.probeId === probeId);
  const gone = Object.values(state.entries).filter(isGone);
  return gone.map(({ probeId }) => ({ probeId, level: 0, value: null, limits: noLimits }));
}
