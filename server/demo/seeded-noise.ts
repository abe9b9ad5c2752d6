// Repeatable noise for the demo: the same seed gives the same numbers on every machine. Never for anything secret.

interface NoiseSource {
  /** Evenly spread in [0, 1). */
  readonly uniform: () => number;
  /** Normal with mean 0 and standard deviation 1, cut off at ±3 so that no invented reading is absurd. */
  readonly normal: () => number;
}

/** A stream of numbers that depends on `seed` only. Generator: mulberry32 (32-bit state, public domain). */
export function createNoise(seed: number): NoiseSource {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return { uniform, normal: () => drawNormal(uniform) };
}

/** A number in [0, 1) for `(seed, index)`, the same whatever was asked before: weather can be read at any instant. */
export function noiseAt(seed: number, index: number): number {
  return createNoise(Math.imul(seed, 0x9e3779b1) ^ Math.imul(index, 0x85ebca6b)).uniform();
}

/** Smooth noise in [0, 1) at `position`: `noiseAt` of the whole numbers on both sides, joined by a cosine. */
export function smoothNoiseAt(seed: number, position: number): number {
  const left = Math.floor(position);
  const share = (1 - Math.cos(Math.PI * (position - left))) / 2;
  return noiseAt(seed, left) * (1 - share) + noiseAt(seed, left + 1) * share;
}

// Box–Muller; 1 − u keeps the logarithm finite.
function drawNormal(uniform: () => number): number {
  const value = Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return Math.min(3, Math.max(-3, value));
}
