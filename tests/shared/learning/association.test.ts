import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Association, type ExposedBatch, findAssociations } from '../../../shared/learning/association.ts';
import { createNoiseStream } from '../../support/noise-stream.ts';

/** Batches whose loss grows with their heat, each with whatever else is given for it. */
function inOrder(count: number, more: (i: number) => Record<string, number | null> = () => ({})): ExposedBatch[] {
  return Array.from({ length: count }, (_, i) => ({ lost: 0.02 + i / 100, exposures: { heat: i * 10, ...more(i) } }));
}

function of(exposure: string, batches: readonly ExposedBatch[]): Association {
  const found = findAssociations(batches).find((one) => one.exposure === exposure);
  if (found === undefined) throw new Error(`${exposure} was not looked at`);
  return found;
}

describe('one exposure in perfect order with loss: the word grows with the batches', () => {
  test.each([
    { count: 1, strength: 'too-few' },
    { count: 4, strength: 'too-few' },
    { count: 5, strength: 'perhaps' },
    { count: 9, strength: 'perhaps' },
    { count: 10, strength: 'likely' },
    { count: 19, strength: 'likely' },
    { count: 20, strength: 'very-likely' },
  ])('$count batches: $strength', ({ count, strength }) => {
    expect(of('heat', inOrder(count)).strength).toBe(strength);
  });

  test('with its figures: τ = 1, all pairs, the p of five batches', () => {
    expect(of('heat', inOrder(5))).toMatchObject({
      batches: 5,
      tau: 1,
      pairs: { concordant: 10, discordant: 0, tied: 0 },
    });
    expect(of('heat', inOrder(5)).p).toBeCloseTo(2 / 120, 14);
  });

  test('less loss with more of it is told as such', () => {
    const { tau, pairs } = of(
      'heat',
      inOrder(6).map(({ lost, exposures }) => ({ lost: 1 - lost, exposures })),
    );
    expect(tau).toBe(-1);
    expect(pairs).toEqual({ concordant: 0, discordant: 15, tied: 0 });
  });
});

describe('several exposures asked of the same batches', () => {
  const sixMore = (i: number) =>
    Object.fromEntries(['a', 'b', 'c', 'd', 'e', 'f'].map((name, n) => [name, ((i + n) * 7) % 5]));

  test('what five batches could say of one, they cannot say of seven', () => {
    expect(of('heat', inOrder(5)).strength).toBe('perhaps');
    expect(of('heat', inOrder(5, sixMore)).strength).toBe('too-few');
  });

  test('the p is adjusted for all that were looked at, the smallest times their number', () => {
    const heat = of('heat', inOrder(8, sixMore));
    expect(heat.adjustedP).toBeCloseTo(7 * (heat.p ?? 0), 12);
  });

  test('the strongest comes first, and those that could not be tested last', () => {
    const batches = inOrder(10, (i) => ({ never: null, constant: 3, wet: (i * 7) % 10 }));
    expect(findAssociations(batches).map(({ exposure, strength }) => ({ exposure, strength }))).toEqual([
      { exposure: 'heat', strength: 'likely' },
      { exposure: 'wet', strength: 'nothing-seen' },
      { exposure: 'constant', strength: 'no-difference' },
      { exposure: 'never', strength: 'too-few' },
    ]);
  });

  test('an exposure that cannot be tested is no question, and costs the others nothing', () => {
    const withIt = of(
      'heat',
      inOrder(10, () => ({ constant: 3 })),
    );
    expect(withIt.adjustedP).toBe(of('heat', inOrder(10)).adjustedP);
  });
});

describe('what is not known', () => {
  test('a batch without the exposure is left out for it, and only for it', () => {
    const batches = inOrder(12, (i) => ({ dry: i < 4 ? null : i }));
    expect(of('dry', batches).batches).toBe(8);
    expect(of('heat', batches).batches).toBe(12);
  });

  test('the same loss in every batch: nothing to learn from', () => {
    const batches = inOrder(12).map((batch) => ({ ...batch, lost: 0.05 }));
    expect(of('heat', batches)).toMatchObject({
      strength: 'no-difference',
      tau: null,
      p: null,
      pairs: { concordant: 0, discordant: 0 },
    });
  });

  test('no batches, no findings', () => {
    expect(findAssociations([])).toEqual([]);
  });
});

test('of 200 nurseries of 12 batches and 5 exposures that have nothing to do with loss, at most 7 % hear "likely" of any', () => {
  const stream = createNoiseStream(77);
  const names = ['heat', 'cold', 'dry', 'wet', 'late'];
  const nursery = (): ExposedBatch[] =>
    Array.from({ length: 12 }, () => ({
      lost: stream.uniform(),
      exposures: Object.fromEntries(names.map((name) => [name, stream.uniform()])),
    }));
  const misled = Array.from({ length: 200 }, nursery).filter((batches) =>
    findAssociations(batches).some(({ strength }) => strength === 'likely' || strength === 'very-likely'),
  );
  expect(misled.length / 200).toBeLessThan(0.07);
});

test('the order in which batches are given changes nothing', () => {
  const batch = fc.record({
    lost: fc.double({ min: 0, max: 1, noNaN: true }),
    exposures: fc.record({ heat: fc.integer({ min: 0, max: 20 }), dry: fc.option(fc.integer({ min: 0, max: 20 })) }),
  });
  fc.assert(
    fc.property(fc.array(batch, { minLength: 1, maxLength: 7 }), (batches) => {
      expect(findAssociations(batches.toReversed())).toEqual(findAssociations(batches));
    }),
    { numRuns: 30 },
  );
});
