// What of an answer about venting is shown, and how a step of the plan is said. Pure.
import type { VentingView } from '../../shared/api/venting.ts';
import { humidityLimitText } from '../quantities.ts';
import { words } from '../strings.ts';

/** Venting is near or under way. Before and after, the page has no place for it. */
export function isVentingShown({ phase }: Pick<VentingView, 'phase'>): boolean {
  return phase === 'near' || phase === 'under-way';
}

/** The band of a step and from when on it may be opened. */
export function stepWords(
  { low, high, opensAt }: NonNullable<VentingView['step']>,
  nowMs: number,
  time: (at: string) => string,
): string {
  const step = words.venting.step(humidityLimitText(low), humidityLimitText(high));
  return Date.parse(opensAt) > nowMs ? words.venting.stepFrom(step, time(opensAt)) : words.venting.stepNow(step);
}
