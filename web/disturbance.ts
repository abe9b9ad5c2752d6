// Why the air of a chamber is disturbed on purpose, as it is said beside it: somebody works in the tent, or the air settles. Pure.
import { AIR_RECOVERS_MS } from '../shared/alarms/suppression.ts';
import type { ChamberView } from '../shared/api/chambers.ts';
import { SECOND_MS } from '../shared/units.ts';
import { words } from './strings.ts';
import { dayAndTime } from './when.ts';

/** The page's clock moves each ten seconds: without this slack "Work done" would stay for a moment after it was pressed. */
const SLACK_MS = 30 * SECOND_MS;

export interface Disturbance {
  readonly sentence: string;
  /** Somebody is still at work, so that it can be said to be done. */
  readonly isAtWork: boolean;
}

/** What disturbs the air at `nowMs`, in words; null when nothing does, or not any more. */
export function disturbanceOf(
  suppression: ChamberView['suppression'],
  nowMs: number,
  zone: string,
): Disturbance | null {
  if (suppression === null) return null;
  const untilMs = Date.parse(suppression.until);
  if (untilMs <= nowMs) return null;
  const { cause, by } = suppression;
  const quietUntil = dayAndTime(untilMs, nowMs, zone);
  if (cause === 'vent-step') return { sentence: words.disturbance.ventStep(by, quietUntil), isAtWork: false };
  const workEndsMs = untilMs - AIR_RECOVERS_MS;
  if (workEndsMs - nowMs <= SLACK_MS) return { sentence: words.disturbance.afterWork(by, quietUntil), isAtWork: false };
  const worksUntil = dayAndTime(workEndsMs, nowMs, zone);
  return { sentence: words.disturbance.working(by, worksUntil, quietUntil), isAtWork: true };
}
