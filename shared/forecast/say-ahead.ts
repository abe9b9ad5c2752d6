// A forecast in words, the same on screen, phone and in a replay.

/** Minutes from now; `low` and `high` hold eight cases of ten, null = perhaps never. */
interface Ahead {
  readonly minutes: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** "reaches 28 °C in about 12 min (8–20)"; without an end of the interval "(8 or more)". `limit` with its unit. */
export function sayAhead(limit: string, { minutes, low, high }: Ahead): string {
  const about = whole(minutes);
  if (about < 1) return `reaches ${limit} any minute`;
  return `reaches ${limit} in about ${about} min${sayInterval(low, high)}`;
}

function sayInterval(low: number | null, high: number | null): string {
  if (low === null) return '';
  return high === null ? ` (${whole(low)} or more)` : ` (${whole(low)}–${whole(high)})`;
}

function whole(minutes: number): number {
  return Math.max(0, Math.round(minutes));
}
