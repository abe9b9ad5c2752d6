// The standard normal distribution function.

/** Share (0–1) of a standard normal variable that lies below `z`, to about 10⁻⁷. */
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
