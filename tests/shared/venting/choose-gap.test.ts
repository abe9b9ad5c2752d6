import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chooseGap, type GapCandidate, type GapChoice, type GapWish } from '../../../shared/venting/choose-gap.ts';
import { sayNoOpening } from '../../../shared/venting/say-venting.ts';
import { wordsOf } from '../../../shared/words/words-of.ts';

/** Candidates from narrow to wide, settled within the hour unless said otherwise. */
function candidates(humidities: Readonly<Record<number, number>>, plusMinus = 2, ratePerHour = 20): GapCandidate[] {
  return Object.entries(humidities).map(([gap, humidity]) => {
    return { gapPercent: Number(gap), humidity, plusMinus, ratePerHour };
  });
}

function wish(given: {
  humidity?: number;
  gapPercent?: number;
  house?: number;
  low?: number;
  high?: number;
  grace?: number;
}): GapWish {
  return {
    air: {
      chamber: { temperature: 22, humidity: given.humidity ?? 90 },
      house: { temperature: 20, humidity: given.house ?? 55 },
      altitudeM: 0,
      gapPercent: given.gapPercent ?? 10,
    },
    step: { low: given.low ?? 75, high: given.high ?? 85 },
    gracePerHour: given.grace ?? 20,
  };
}

function chosen(choice: ReturnType<typeof chooseGap>): GapChoice {
  if ('why' in choice) throw new Error(choice.why);
  return choice;
}

describe('too wet', () => {
  test('takes the gap nearest to the middle of the step', () => {
    const choice = chosen(chooseGap(candidates({ 15: 86, 20: 83, 25: 79, 30: 76 }), wish({})));
    expect(choice).toMatchObject({ candidate: { gapPercent: 25 }, shortBy: null });
  });

  test('stays clear of the low limit by its ±, even where that is nearer to the high one', () => {
    const choice = chosen(chooseGap(candidates({ 20: 84.5, 30: 79.9 }, 5), wish({})));
    expect(choice.candidate.gapPercent).toBe(20);
  });

  test.each([
    { plusMinus: 4, gapPercent: 30, why: 'the ± ends on the low limit' },
    { plusMinus: 4.1, gapPercent: 20, why: 'the ± reaches below it' },
  ])('± $plusMinus: $why', ({ plusMinus, gapPercent }) => {
    const choice = chosen(chooseGap(candidates({ 20: 84, 30: 79 }, plusMinus), wish({})));
    expect(choice.candidate.gapPercent).toBe(gapPercent);
  });

  test('never goes back to a narrower gap or stays', () => {
    const choice = chosen(chooseGap(candidates({ 10: 80, 15: 80, 20: 80, 25: 78 }), wish({ gapPercent: 20 })));
    expect(choice.candidate.gapPercent).toBe(25);
  });

  test('the fall in the first hour is what the air loses in it: all of it when it settles fast', () => {
    expect(chosen(chooseGap(candidates({ 25: 80 }), wish({}))).dryingRatePerHour).toBeCloseTo(10, 5);
    const slow = chosen(chooseGap(candidates({ 25: 80 }, 2, 0.5), wish({})));
    expect(slow.dryingRatePerHour).toBeCloseTo(10 * (1 - Math.exp(-0.5)), 10);
  });
});

describe('the grace of the profile', () => {
  const steps = candidates({ 12: 88, 15: 86, 20: 84, 25: 80 });

  test('leaves the middle of the step for its wet end where that is slow enough', () => {
    expect(chosen(chooseGap(steps, wish({ grace: 6.5 })))).toMatchObject({
      candidate: { gapPercent: 20 },
      shortBy: null,
    });
  });

  test('goes part of the way where the step at once would be too fast', () => {
    const choice = chosen(chooseGap(steps, wish({ grace: 5 })));
    expect(choice).toMatchObject({ candidate: { gapPercent: 15 }, shortBy: 'grace' });
    expect(choice.dryingRatePerHour).toBeLessThanOrEqual(5);
  });

  test.each([
    { grace: 4, gapPercent: 15, why: 'a fall of exactly the grace is allowed' },
    { grace: 3.99, gapPercent: 12, why: 'any more is not' },
  ])('$grace %RH an hour: $why', ({ grace, gapPercent }) => {
    // So fast that the whole fall is within the hour, to the last digit.
    const fast = steps.map((one) => ({ ...one, ratePerHour: 1000 }));
    expect(chosen(chooseGap(fast, wish({ grace }))).candidate.gapPercent).toBe(gapPercent);
  });

  test('refuses when every gap that helps would break it', () => {
    expect(chooseGap(candidates({ 25: 80 }), wish({ grace: 5 }))).toMatchObject({ why: 'dries-too-fast' });
    expect(chooseGap(candidates({ 11: 89.5, 25: 80 }), wish({ grace: 5 }))).toMatchObject({ why: 'dries-too-fast' });
  });
});

describe('house air that does not allow the step', () => {
  test.each([
    { house: 76, why: 'house-too-wet', because: '76 %RH at 20 °C are 67 % in the warmth of 22 °C, above 65' },
    { house: 72, why: null, because: '72 %RH are 64 %, just below it' },
  ])('$house %RH: $because', ({ house, why }) => {
    const choice = chooseGap(candidates({ 20: 85, 60: 70 }), wish({ house, low: 55, high: 65 }));
    expect('why' in choice ? choice.why : null).toBe(why);
  });

  test('too dry: even the narrowest gap would fall below', () => {
    const choice = chooseGap(candidates({ 11: 74.9, 30: 50 }), wish({}));
    expect(choice).toEqual({ why: 'house-too-dry', gapPercent: 11, humidity: 74.9 });
  });
});

describe('part of the way', () => {
  test('where the widest gap that can be judged is still too narrow', () => {
    const choice = chosen(chooseGap(candidates({ 20: 89, 30: 87 }), wish({})));
    expect(choice).toMatchObject({ candidate: { gapPercent: 30 }, shortBy: 'experience' });
  });

  test('where wider gaps might fall below the low limit', () => {
    const uncertain = [...candidates({ 20: 86.5 }, 3), ...candidates({ 30: 80 }, 9)];
    const choice = chosen(chooseGap(uncertain, wish({})));
    expect(choice).toMatchObject({ candidate: { gapPercent: 20 }, shortBy: 'certainty' });
  });

  test.each([
    { given: candidates({ 20: 89.5 }), why: 'not-sure-enough', because: 'half a per cent is no use' },
    { given: candidates({ 20: 83, 30: 80 }, 12), why: 'not-sure-enough', because: 'every ± reaches below the limit' },
    { given: [], why: 'no-gap-left', because: 'there is no wider gap to judge' },
  ])('not at all: $because', ({ given, why }) => {
    expect(chooseGap(given, wish({}))).toMatchObject({ why });
  });
});

describe('too dry', () => {
  const dry = { humidity: 70, gapPercent: 40 };

  test('goes back to the gap nearest to the middle of the step, however fast the air gets wetter', () => {
    const choice = chosen(chooseGap(candidates({ 15: 86, 20: 81, 30: 77, 40: 70 }), wish({ ...dry, grace: 1 })));
    expect(choice).toMatchObject({ candidate: { gapPercent: 20 }, dryingRatePerHour: 0, shortBy: null });
  });

  test.each([
    {
      given: candidates({ 40: 70, 50: 65 }),
      no: { why: 'no-gap-left', isTooDry: true },
      because: 'nothing narrower was tried',
    },
    {
      given: candidates({ 20: 73, 40: 70 }),
      no: { why: 'house-too-dry', gapPercent: 20, humidity: 73 },
      because: 'the narrowest is still too dry',
    },
    {
      given: candidates({ 20: 80, 40: 70 }, 9),
      no: { why: 'not-sure-enough', isTooDry: true },
      because: 'it might be',
    },
  ] as const)('$no.why: $because', ({ given, no }) => {
    const choice = chooseGap(given, wish(dry));
    expect(choice).toEqual(no);
    expect(sayNoOpening(no, wordsOf.en)).toMatch(/close|closed/i);
  });
});

test('whatever the candidates: never below the low limit by its ±, never faster than the grace, never toward more of the same', () => {
  const candidate = fc.record({
    gapPercent: fc.integer({ min: 0, max: 100 }),
    humidity: fc.double({ min: 30, max: 100, noNaN: true }),
    plusMinus: fc.double({ min: 0, max: 10, noNaN: true }),
    ratePerHour: fc.double({ min: 0.1, max: 60, noNaN: true }),
  });
  const anyCandidates = fc.uniqueArray(candidate, { maxLength: 12, selector: ({ gapPercent }) => gapPercent });
  const anyWish = fc.record({
    humidity: fc.double({ min: 40, max: 100, noNaN: true }),
    gapPercent: fc.integer({ min: 0, max: 100 }),
    house: fc.double({ min: 30, max: 90, noNaN: true }),
    low: fc.double({ min: 50, max: 80, noNaN: true }),
    grace: fc.double({ min: 1, max: 20, noNaN: true }),
  });
  fc.assert(
    fc.property(anyCandidates, anyWish, (drawn, given) => {
      const wanted = wish({ ...given, high: given.low + 10 });
      const choice = chooseGap(
        [...drawn].sort((a, b) => a.gapPercent - b.gapPercent),
        wanted,
      );
      if ('why' in choice) {
        expect(sayNoOpening(choice, wordsOf.en)).toMatch(/^[A-Z].*\.$/);
        return;
      }
      const { candidate: taken, dryingRatePerHour, shortBy } = choice;
      expect(taken.humidity - taken.plusMinus).toBeGreaterThanOrEqual(wanted.step.low);
      expect(dryingRatePerHour).toBeLessThanOrEqual(wanted.gracePerHour);
      if (given.humidity < given.low) expect(taken.gapPercent).toBeLessThan(given.gapPercent);
      else expect(taken.gapPercent).toBeGreaterThan(given.gapPercent);
      if (shortBy === null) expect(taken.humidity).toBeLessThanOrEqual(wanted.step.high);
    }),
    { numRuns: 500 },
  );
});
