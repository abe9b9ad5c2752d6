// One simulated chamber for the tests: closed at three in the afternoon, read every minute from then on.
import type { ChamberOptions } from '../../../server/demo/live-chamber.ts';
import { MINUTE_MS } from '../../../shared/units.ts';

export const closedMs = Date.parse('2026-04-06T15:00:00+02:00');
export const options: ChamberOptions = {
  seed: 5,
  zone: 'Europe/Amsterdam',
  closedMs,
  startMs: closedMs,
  stepMs: MINUTE_MS,
  scenario: { kind: 'steady' },
  filmProbe: true,
};
