// Which exposure goes with lost take, over all batches, and how strongly that may be said. It never says that one causes the other: season,
// crew, variety and other exposures come along with each.
import { holmAdjusted } from './holm.ts';
import { rankPValue, smallestPValue } from './rank-p-value.ts';
import { countPairs, kendallTau, type PairCounts } from './rank-pairs.ts';

/** One finished batch: the share of plants lost, 0–1, and its exposures by name; null = not known for this batch. */
export interface ExposedBatch {
  readonly lost: number;
  readonly exposures: Readonly<Record<string, number | null>>;
}

export const strengths = ['too-few', 'no-difference', 'nothing-seen', 'perhaps', 'likely', 'very-likely'] as const;
/** How strongly it may be said that an exposure goes with loss. */
export type Strength = (typeof strengths)[number];

export interface Association {
  readonly exposure: string;
  /** Batches in which the exposure is known. */
  readonly batches: number;
  /** Kendall's τ-b: above 0, more of it goes with more loss. Null where nothing differs. */
  readonly tau: number | null;
  readonly pairs: PairCounts;
  /** Two-sided, for this exposure alone, and for all that were looked at (Holm). Null where not tested. */
  readonly p: number | null;
  readonly adjustedP: number | null;
  readonly strength: Strength;
}

/** Fewer say nothing, whatever their order. */
const FEWEST = 5;
/** The adjusted p above which nothing is said at all. */
const WEAKEST_P = 0.1;

/** Thresholds on the adjusted p, with the fewest batches for each word: a small p from a handful of batches is still a handful (ours). */
const words: readonly { readonly strength: Strength; readonly adjustedP: number; readonly batches: number }[] = [
  { strength: 'very-likely', adjustedP: 0.005, batches: 20 },
  { strength: 'likely', adjustedP: 0.05, batches: 10 },
  { strength: 'perhaps', adjustedP: WEAKEST_P, batches: FEWEST },
];

/**
 * Every exposure that occurs in any batch, the strongest first (smallest adjusted p, then name). Tested is what could show anything: where
 * even a perfect order of so many batches would not reach "perhaps" among so many exposures, it is too few to say.
 */
export function findAssociations(batches: readonly ExposedBatch[]): Association[] {
  const names = [...new Set(batches.flatMap(({ exposures }) => Object.keys(exposures)))].sort();
  const tested = names.map((name) => testOne(name, batches));
  const asked = tested.filter(({ p }) => p !== null);
  const adjusted = holmAdjusted(asked.map(({ p }) => p ?? 1));
  return tested
    .map((one) => {
      const adjustedP = one.p === null ? null : (adjusted[asked.indexOf(one)] ?? null);
      return { ...one, adjustedP, strength: judgeStrength(one, adjustedP, asked.length) };
    })
    .sort((a, b) => (a.adjustedP ?? 2) - (b.adjustedP ?? 2));
}

type Tested = Omit<Association, 'adjustedP' | 'strength'>;

function testOne(exposure: string, batches: readonly ExposedBatch[]): Tested {
  const known = batches.flatMap(({ lost, exposures }) => {
    const value = exposures[exposure];
    return value === undefined || value === null ? [] : { value, lost };
  });
  const values = known.map(({ value }) => value);
  const losses = known.map(({ lost }) => lost);
  const tau = kendallTau(values, losses);
  const pairs = countPairs(values, losses);
  const p = tau === null || known.length < FEWEST ? null : rankPValue(values, losses);
  return { exposure, batches: known.length, tau, pairs, p };
}

function judgeStrength({ batches, tau }: Tested, adjustedP: number | null, asked: number): Strength {
  if (batches < FEWEST) return 'too-few';
  if (tau === null || adjustedP === null) return 'no-difference';
  if (smallestPValue(batches) * asked > WEAKEST_P) return 'too-few';
  const word = words.find((one) => adjustedP <= one.adjustedP && batches >= one.batches);
  return word?.strength ?? 'nothing-seen';
}
