// The chance that a wandering value has passed a limit by a time, from what is expected of it at that time.

/**
 * Probability (0–1) that a value `distance` below a limit has passed it by the time at which its gain is expected to be `gain`, give or take
 * the standard deviation `sd`. First passage of Brownian motion with drift (inverse Gaussian law, from memory; checked against a simulated
 * walk in the tests): Φ((gain − distance)/sd) + e^(2·gain·distance/sd²) · Φ(−(gain + distance)/sd). Exact for such a walk; a smoother one
 * passes a little less often. At or beyond the limit (`distance` ≤ 0) it is 1.
 */
export function passedBy(distance: number, gain: number, sd: number): number {
  if (distance <= 0) return 1;
  if (sd <= 0) return gain >= distance ? 1 : 0;
  const arrived = normalBelow((gain - distance) / sd);
  const turnedBack = turnedBackShare(distance, gain, sd);
  return Math.min(1, arrived + turnedBack);
}

/** The second term, written so that a huge and a tiny factor never meet. */
function turnedBackShare(distance: number, gain: number, sd: number): number {
  const z = (gain + distance) / sd;
  if (z < 0) return Math.exp((2 * gain * distance) / (sd * sd)) * normalBelow(-z);
  const short = (distance - gain) / sd;
  return (Math.exp((-short * short) / 2) * scaledTail(z / Math.SQRT2)) / 2;
}

/** Standard normal distribution function. */
export function normalBelow(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const tail = (Math.exp(-x * x) * scaledTail(x)) / 2;
  return z < 0 ? tail : 1 - tail;
}

const tailTerms = [
  -1.26551223, 1.00002368, 0.37409196, 0.09678418, -0.18628806, 0.27886807, -1.13520398, 1.48851587, -0.82215223,
  0.17087277,
];

/** e^(x²)·erfc(x) for x ≥ 0, to 1.2·10⁻⁷ of itself (Chebyshev fit of Numerical Recipes, §6.2; from memory, checked in the tests). */
function scaledTail(x: number): number {
  const t = 1 / (1 + x / 2);
  let sum = 0;
  for (let i = tailTerms.length - 1; i >= 0; i--) sum = sum * t + (tailTerms[i] ?? 0);
  return t * Math.exp(sum);
}
