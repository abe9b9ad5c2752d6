// The service's time as this page knows it. A phone with a wrong clock must not make an old value look fresh.
import { signal } from '@preact/signals';
import { MINUTE_MS, SECOND_MS } from '../shared/units.ts';

let serverAheadMs = 0;

/** Now by the service's clock, moved each second: only for the few places that show seconds. */
export const nowMs = signal(Date.now());
/** The same, moved each ten seconds: for everything else, so that sixty rows are not drawn each second. */
export const slowNowMs = signal(Date.now());

/** Moves the clock on; also called when a tab wakes up, before anything is shown with an old time. */
export function tick(): void {
  nowMs.value = Date.now() + serverAheadMs;
  if (Math.abs(nowMs.value - slowNowMs.value) >= 10 * SECOND_MS) slowNowMs.value = nowMs.value;
}

/** Takes the service's time from a message that has just come. */
export function takeServerTime(at: string): void {
  const ahead = Date.parse(at) - Date.now();
  if (Number.isNaN(ahead)) return;
  const isJump = Math.abs(ahead - serverAheadMs) > MINUTE_MS;
  serverAheadMs = isJump || ahead > serverAheadMs ? ahead : serverAheadMs;
  if (isJump) tick();
}

/** Starts the ticking. */
export function startClock(): void {
  setInterval(tick, SECOND_MS);
}
