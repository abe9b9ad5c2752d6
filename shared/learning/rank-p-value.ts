// How often chance alone would give pairs as one-sided as these: counted out where that is possible, never drawn at random.
import { countPairs, tieGroups } from './rank-pairs.ts';

/** Up to this many batches every order is tried: 8! = 40 320. */
const LONGEST_TRIED = 8;
/** Up to this many, orders without ties are counted by recursion; beyond, the normal curve is as good. */
const LONGEST_COUNTED = 60;

/**
 * Two-sided p of concordant − discordant pairs if the order of one list were chance: exact for up to 8 batches (all orders, ties as they are)
 * and without ties for up to 60; else the normal approximation with Kendall's variance for ties (Kendall 1970, from memory) and a continuity
 * correction of 1. 1 when either list is constant.
 */
export function rankPValue(xs: readonly number[], ys: readonly number[]): number {
  const score = Math.abs(scoreOf(xs, ys));
  if (tieGroups(xs).length < 2 || tieGroups(ys).length < 2) return 1;
  if (xs.length <= LONGEST_TRIED) return shareOfOrders(xs, ys, score);
  const isUntied = tieGroups(xs).length === xs.length && tieGroups(ys).length === ys.length;
  return isUntied && xs.length <= LONGEST_COUNTED ? countedP(xs.length, score) : normalP(xs, ys, score);
}

/** The smallest p that this many batches can give at all, without ties: two orders of n! are the most one-sided. */
export function smallestPValue(batches: number): number {
  let p = 2;
  for (let i = 2; i <= batches; i++) p /= i;
  return Math.min(1, p);
}

function scoreOf(xs: readonly number[], ys: readonly number[]): number {
  const { concordant, discordant } = countPairs(xs, ys);
  return concordant - discordant;
}

function shareOfOrders(xs: readonly number[], ys: readonly number[], score: number): number {
  let [all, asFar] = [0, 0];
  forEachOrder([...ys], (order) => {
    all++;
    if (Math.abs(scoreOf(xs, order)) >= score) asFar++;
  });
  return asFar / all;
}

/** Heap's algorithm: every order once, in place. */
function forEachOrder(values: number[], visit: (order: readonly number[]) => void, length = values.length): void {
  if (length <= 1) visit(values);
  for (let i = 0; length > 1 && i < length; i++) {
    forEachOrder(values, visit, length - 1);
    const other = length % 2 === 0 ? i : 0;
    [values[other], values[length - 1]] = [values[length - 1] ?? 0, values[other] ?? 0];
  }
}

/** Orders of n by their number of discordant pairs, as shares: p(n, d) is the mean of p(n − 1, d − n + 1) … p(n − 1, d). */
function countedP(batches: number, score: number): number {
  let shares = [1];
  for (let n = 2; n <= batches; n++) {
    const wider = new Array<number>(shares.length + n - 1).fill(0);
    shares.forEach((share, d) => {
      for (let more = 0; more < n; more++) wider[d + more] = (wider[d + more] ?? 0) + share / n;
    });
    shares = wider;
  }
  const pairs = (batches * (batches - 1)) / 2;
  const asFar = shares.filter((_, discordant) => Math.abs(pairs - 2 * discordant) >= score);
  return Math.min(
    1,
    asFar.reduce((sum, share) => sum + share, 0),
  );
}

function normalP(xs: readonly number[], ys: readonly number[], score: number): number {
  const z = Math.max(0, score - 1) / Math.sqrt(scoreVariance(xs.length, tieGroups(xs), tieGroups(ys)));
  return Math.min(1, 2 * upperTail(z));
}

function scoreVariance(n: number, xTies: readonly number[], yTies: readonly number[]): number {
  const sum = (ties: readonly number[], term: (t: number) => number) => ties.reduce((total, t) => total + term(t), 0);
  const spread = (t: number) => t * (t - 1) * (2 * t + 5);
  const pairs = (t: number) => t * (t - 1);
  const triples = (t: number) => t * (t - 1) * (t - 2);
  return (
    (spread(n) - sum(xTies, spread) - sum(yTies, spread)) / 18 +
    (sum(xTies, triples) * sum(yTies, triples)) / (9 * triples(n)) +
    (sum(xTies, pairs) * sum(yTies, pairs)) / (2 * pairs(n))
  );
}

/** Upper tail of the normal curve, to 1e-7 (Abramowitz & Stegun 26.2.17, from memory). */
function upperTail(z: number): number {
  const t = 1 / (1 + 0.2316419 * z);
  const series = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * series;
}
