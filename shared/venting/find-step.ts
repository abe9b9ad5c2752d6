// Which step of the humidity corridor the air has to come to next, and from when on. It reads the corridor only, and holds no limit of its own.
import { MINUTE_MS } from '../units.ts';

interface HumidityBand {
  readonly low: number;
  readonly high: number;
}

/** A step: where low and high come to rest, %RH, and the instant from which the air may go there without falling below the low limit. */
export interface CorridorStep extends HumidityBand {
  readonly fromMs: number;
}

/** The humidity band at an instant, ms; null = none holds then. */
export type HumidityBandAt = (atMs: number) => HumidityBand | null;

/** The corridor is looked at this often: no step of a profile is shorter (ours). */
const LOOK_MS = 5 * MINUTE_MS;
/** The low limit has gone on to another step when it is this much lower, %RH; a ramp is taken in pieces of this size. */
const STEP_SIZE = 1;

/**
 * The step to go to with air of this humidity, %RH: the one in force while the air is wetter than its high limit, else the next that lowers the
 * low limit, up to `untilMs`. The low limit loosens at once and the high one follows by the grace, so that a step's own high limit is the
 * lowest it has before the following step. Null when no band holds now or none is lowered any more.
 */
export function findStep(
  bandAt: HumidityBandAt,
  humidity: number,
  nowMs: number,
  untilMs: number,
): CorridorStep | null {
  let step = restOf(bandAt, nowMs, untilMs);
  if (step === null || humidity > step.high) return step;
  while (step !== null && step.endMs < untilMs) {
    const next: RestingStep | null = restOf(bandAt, step.endMs, untilMs);
    if (next !== null && next.low < step.low) return next;
    step = next;
  }
  return null;
}

interface RestingStep extends CorridorStep {
  readonly endMs: number;
}

/** From `fromMs` as long as the low limit stays: its low, and the lowest high. */
function restOf(bandAt: HumidityBandAt, fromMs: number, untilMs: number): RestingStep | null {
  const first = bandAt(fromMs);
  if (first === null) return null;
  let [endMs, high] = [fromMs, first.high];
  for (; endMs < untilMs; endMs += LOOK_MS) {
    const band = bandAt(endMs);
    if (!staysAt(first, band)) break;
    high = Math.min(high, band.high);
  }
  if (endMs >= untilMs) return { fromMs, endMs: untilMs, low: first.low, high };
  return {
    fromMs,
    endMs: borderBetween(endMs - LOOK_MS, endMs, (ms) => staysAt(first, bandAt(ms))),
    low: first.low,
    high,
  };
}

function staysAt(first: HumidityBand, band: HumidityBand | null): band is HumidityBand {
  return band !== null && Math.abs(band.low - first.low) < STEP_SIZE;
}

/** The first millisecond at which it no longer stays, between one at which it does and one at which it does not. */
function borderBetween(stillMs: number, goneMs: number, stays: (ms: number) => boolean): number {
  let [still, gone] = [stillMs, goneMs];
  while (gone - still > 1) {
    const middle = Math.floor((still + gone) / 2);
    if (stays(middle)) still = middle;
    else gone = middle;
  }
  return gone;
}
