// How a local linear trend moves by itself over a step of any length: the mathematics of trend models, without any measurement.
import type { TrendModel } from './local-linear-trend.ts';

/** How level and slope move over a step, and the noise that comes with it. */
interface Motion {
  /** Share of the slope that is left. */
  readonly fade: number;
  /** Minutes of the slope that the level gains. */
  readonly reach: number;
  readonly levelNoise: number;
  readonly bothNoise: number;
  readonly slopeNoise: number;
}

// A probe measures at an even pace, and forecasts look ahead equally far: the same few steps are asked for again and again.
const knownMotions = new WeakMap<TrendModel, Map<number, Motion>>();
const MOST_KNOWN = 16;

/** The motion over `minutes` (0 or more). */
export function motionOver(minutes: number, model: TrendModel): Motion {
  let motions = knownMotions.get(model);
  if (motions === undefined || motions.size > MOST_KNOWN) {
    motions = new Map();
    knownMotions.set(model, motions);
  }
  const known = motions.get(minutes);
  if (known !== undefined) return known;
  const motion = model.slopeLastsMinutes === Infinity ? lastingMotion(minutes, model) : fadingMotion(minutes, model);
  motions.set(minutes, motion);
  return motion;
}

function lastingMotion(minutes: number, { levelWalk, slopeWalk }: TrendModel): Motion {
  const drift = slopeWalk * slopeWalk;
  return {
    fade: 1,
    reach: minutes,
    levelNoise: levelWalk * levelWalk * minutes + (drift * minutes ** 3) / 3,
    bothNoise: (drift * minutes ** 2) / 2,
    slopeNoise: drift * minutes,
  };
}

function fadingMotion(minutes: number, { levelWalk, slopeWalk, slopeLastsMinutes: lasts }: TrendModel): Motion {
  const drift = slopeWalk * slopeWalk;
  const share = minutes / lasts;
  const reach = -lasts * Math.expm1(-share);
  // The terms cancel to dust for a very short step, which must not fall below nothing.
  const wander = Math.max(0, share + 2 * Math.expm1(-share) - Math.expm1(-2 * share) / 2);
  return {
    fade: Math.exp(-share),
    reach,
    levelNoise: levelWalk * levelWalk * minutes + drift * lasts ** 3 * wander,
    bothNoise: (drift * reach * reach) / 2,
    slopeNoise: (-drift * lasts * Math.expm1(-2 * share)) / 2,
  };
}
