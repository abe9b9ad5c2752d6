// The pure reducer of a chamber's alarms: (state, event) → (state, effects). It sends nothing and stores nothing; the same code
// serves the live watch and a replay of the past.

import { standingLevel } from './debounce.ts';
import { endWithBatch } from './end-with-batch.ts';
import { observeEntry } from './observe-entry.ts';
import { actOnAlarm, expireShelves } from './people-acts.ts';
import { allRules } from './rules/index.ts';
import { type Judgement, noLimits, type Rule, type Scene } from './rules/rule.ts';
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
  const expired = expireShelves(ended.state, scene.nowMs);
  const entries: Record<string, WatchEntry> = { ...expired.state.entries };
  const effects: Effect[] = [...ended.effects, ...expired.effects];
  for (const { rule, judgement } of judgeAll(expired.state, scene)) {
    const key = keyOf(rule.id, judgement.probeId);
    const entry = entries[key] ?? calmEntry(rule.id, judgement.probeId);
    const outcome = observeEntry(entry, rule, judgement, scene);
    if (outcome.entry === entry) continue;
    entries[key] = outcome.entry;
    effects.push(...outcome.effects, { type: 'entry-changed', key, entry: outcome.entry });
  }
  return { state: { ...before, entries }, effects };
}

function* judgeAll(state: ChamberWatch, scene: Scene): Generator<{ rule: Rule; judgement: Judgement }> {
  for (const rule of allRules) {
    const held = (probeId: string | null) => {
      const entry = state.entries[keyOf(rule.id, probeId)];
      return entry === undefined ? 0 : standingLevel(entry.memory);
    };
    const judgements = rule.judge(scene, held);
    for (const judgement of judgements) yield { rule, judgement };
    yield* forgetGoneProbes(state, rule, judgements);
  }
}

// A probe that was moved or taken away leaves no judgement behind: what it said is over.
function* forgetGoneProbes(state: ChamberWatch, rule: Rule, judgements: readonly Judgement[]) {
  const judged = new Set(judgements.map((one) => keyOf(rule.id, one.probeId)));
  for (const [key, entry] of Object.entries(state.entries)) {
    if (entry.rule !== rule.id || judged.has(key) || standingLevel(entry.memory) === 0) continue;
    yield { rule, judgement: { probeId: entry.probeId, level: 0 as const, value: null, limits: noLimits } };
  }
}
