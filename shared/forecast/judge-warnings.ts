// Were the warnings worth it? Lead time and false alarms, from what was warned of and what came. The same judge for ours and for its rivals.
import { median } from '../readings/median.ts';
import { DAY_MS, MINUTE_MS } from '../units.ts';

/** A warning: from when it was given until it was taken back; null = it still stood at the end. */
export interface Warning {
  readonly fromMs: number;
  readonly toMs: number | null;
}

/** A spell beyond the limit: from its first reading beyond to its last; dips back inside shorter than `QUIET_MS` belong to it. */
export interface Spell {
  readonly fromMs: number;
  readonly toMs: number;
  /** It began after a quiet time that was seen: only then could it be foreseen, and only then is its beginning a crossing. */
  readonly isCrossing: boolean;
}

export interface WarningFigures {
  readonly warnings: number;
  readonly crossings: number;
  /** Crossings before which a warning began, at most `HORIZON_MS` earlier, and was not taken back. */
  readonly caught: number;
  /** From the beginning of that warning to the crossing, median over the caught; null when none was. */
  readonly medianLeadMinutes: number | null;
  /** Warnings after whose beginning the limit was not passed within `HORIZON_MS`, by weeks of known time; 0 when there is none. */
  readonly falsePerWeek: number;
}

/** A limit passed again sooner than this is the same heat (ours). */
export const QUIET_MS = 30 * MINUTE_MS;
/** A warning longer ahead than this helps nobody, and one that nothing follows for so long was false (ours). */
export const HORIZON_MS = 60 * MINUTE_MS;

/**
 * Judges warnings against spells, both in order of time. `knownMs` is the time for which readings say what came, `endMs` the last of them: a
 * warning so near the end that nobody knows yet is neither right nor false.
 */
export function judgeWarnings(
  warnings: readonly Warning[],
  spells: readonly Spell[],
  { knownMs, endMs }: { readonly knownMs: number; readonly endMs: number },
): WarningFigures {
  const crossings = spells.filter(({ isCrossing }) => isCrossing);
  const leads = crossings.flatMap(({ fromMs }) => leadMinutes(warnings, fromMs) ?? []);
  const wrong = warnings.filter((warning) => isFalse(warning, spells, endMs)).length;
  return {
    warnings: warnings.length,
    crossings: crossings.length,
    caught: leads.length,
    medianLeadMinutes: median(leads),
    falsePerWeek: knownMs <= 0 ? 0 : wrong / (knownMs / (7 * DAY_MS)),
  };
}

function leadMinutes(warnings: readonly Warning[], crossedMs: number): number | null {
  const before = warnings.findLast(({ fromMs }) => fromMs < crossedMs);
  if (before === undefined || (before.toMs !== null && before.toMs < crossedMs)) return null;
  const leadMs = crossedMs - before.fromMs;
  return leadMs > HORIZON_MS ? null : leadMs / MINUTE_MS;
}

function isFalse({ fromMs }: Warning, spells: readonly Spell[], endMs: number): boolean {
  const untilMs = fromMs + HORIZON_MS;
  return untilMs <= endMs && !spells.some((spell) => spell.fromMs <= untilMs && spell.toMs >= fromMs);
}
