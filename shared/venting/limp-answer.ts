// What to do when scions are reported limp after a step: close, mist, hold. It stands until somebody reports them erect again.
import { gapChanges, type VentLogEntry } from './cut-windows.ts';
import type { LimpAct } from './why-not.ts';

export interface LimpAnswer {
  /** When they were reported limp. */
  readonly sinceMs: number;
  /** In this order; `close` is left out once the gap is back, `mist` once they have been misted since. */
  readonly acts: readonly LimpAct[];
  /** The gap to go back to, %: the widest that was followed by "erect", else the one before the last step, else closed. */
  readonly backToPercent: number;
}

/** The answer to the newest report; null when the newest says erect, or nobody has reported. Log entries in any order. */
export function limpAnswer(log: readonly VentLogEntry[]): LimpAnswer | null {
  const reports = log.filter(({ kind }) => kind === 'limp' || kind === 'erect').sort((a, b) => a.atMs - b.atMs);
  const newest = reports.at(-1);
  if (newest === undefined || newest.kind === 'erect') return null;
  const lastErectMs = reports.findLast(({ kind }) => kind === 'erect')?.atMs ?? -Infinity;
  const sinceMs = reports.find(({ kind, atMs }) => kind === 'limp' && atMs > lastErectMs)?.atMs ?? newest.atMs;
  const backToPercent = gapToGoBackTo(log, sinceMs, lastErectMs);
  const isBack = (gapChanges(log).at(-1)?.gapPercent ?? 0) <= backToPercent;
  const isMisted = log.some(({ kind, atMs }) => kind === 'mist' && atMs >= sinceMs);
  const acts = [...(isBack ? [] : (['close'] as const)), ...(isMisted ? [] : (['mist'] as const)), 'hold' as const];
  return { sinceMs, acts, backToPercent };
}

/** The gap under which they were last seen erect, if it is narrower than at the report; else the gap before the last widening; else 0. */
function gapToGoBackTo(log: readonly VentLogEntry[], limpMs: number, lastErectMs: number): number {
  const changes = gapChanges(log).filter(({ atMs }) => atMs <= limpMs);
  const then = changes.at(-1)?.gapPercent ?? 0;
  const underErect = Number.isFinite(lastErectMs)
    ? (changes.findLast(({ atMs }) => atMs <= lastErectMs)?.gapPercent ?? 0)
    : then;
  if (underErect < then) return underErect;
  return changes.findLast(({ gapPercent }) => gapPercent < then)?.gapPercent ?? 0;
}
