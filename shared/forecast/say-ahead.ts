// A forecast in words, the same on screen, phone and in a replay.
import type { Saying } from '../saying.ts';

/** Minutes from now; `low` and `high` hold eight cases of ten, null = perhaps never. */
interface Ahead {
  readonly minutes: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** "reaches 28 °C in about 12 min (8–20)"; without an end of the interval "(8 or more)". `limit` with its unit. */
export function sayAhead(limit: string, { minutes, low, high }: Ahead, { words: { ahead } }: Saying): string {
  const about = whole(minutes);
  if (about < 1) return ahead.anyMinute(limit);
  const said = ahead.inAbout(limit, about);
  if (low === null) return said;
  return `${said} ${high === null ? ahead.orMore(whole(low)) : ahead.between(whole(low), whole(high))}`;
}

function whole(minutes: number): number {
  return Math.max(0, Math.round(minutes));
}
