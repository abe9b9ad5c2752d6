// What to do with the gap next, as people hear it: every refusal is a whole sentence in each language, with its figures.
import { describe, expect, test } from 'vitest';
import { languages } from '../../../shared/languages.ts';
import { sayNoOpening, sayProposal } from '../../../shared/venting/say-venting.ts';
import type { NoOpening } from '../../../shared/venting/why-not.ts';
import { wordsOf } from '../../../shared/words/words-of.ts';

const refusals: readonly { readonly no: NoOpening; readonly figures?: readonly string[] }[] = [
  { no: { why: 'gap-never-changed' } },
  { no: { why: 'no-house-air' } },
  { no: { why: 'saturated' } },
  { no: { why: 'too-fast' } },
  { no: { why: 'too-slow' } },
  { no: { why: 'no-decay' } },
  { no: { why: 'two-paces' } },
  { no: { why: 'other-source' } },
  { no: { why: 'not-monotone' } },
  { no: { why: 'fit-too-old' } },
  { no: { why: 'already-there' } },
  { no: { why: 'too-few-readings', readings: 5 }, figures: ['5', '8'] },
  { no: { why: 'uncertain', percent: 61 }, figures: ['61 %'] },
  { no: { why: 'poor-fit', percent: 43 }, figures: ['43 %'] },
  { no: { why: 'too-few-gaps', gapPercent: 10 }, figures: ['10 %'] },
  { no: { why: 'limp', acts: ['close', 'mist', 'hold'], backToPercent: 20 }, figures: ['20 %'] },
  { no: { why: 'no-air-now', place: 'chamber' } },
  { no: { why: 'no-air-now', place: 'house' } },
  { no: { why: 'still-settling', minutes: 14 }, figures: ['14 min'] },
  { no: { why: 'does-not-match', expected: 62.4, measured: 71.6 }, figures: ['62 %', '72'] },
  { no: { why: 'house-too-wet', humidity: 76.5 }, figures: ['77 %'] },
  { no: { why: 'house-too-dry', gapPercent: 11, humidity: 58.2 }, figures: ['11 %', '58 %'] },
  { no: { why: 'no-gap-left', isTooDry: true } },
  { no: { why: 'no-gap-left', isTooDry: false } },
  { no: { why: 'not-sure-enough', isTooDry: true } },
  { no: { why: 'not-sure-enough', isTooDry: false } },
  { no: { why: 'dries-too-fast', gracePerHour: 12 }, figures: ['12 %'] },
  { no: { why: 'over' } },
  { no: { why: 'on-hold' } },
  { no: { why: 'no-step' } },
  { no: { why: 'not-yet', isFarOff: true, unknown: null } },
  { no: { why: 'not-yet', isFarOff: false, unknown: null } },
  { no: { why: 'not-yet', isFarOff: false, unknown: { why: 'too-few-gaps', gapPercent: 15 } }, figures: ['15 %'] },
];

describe.each(languages)('in %s', (language) => {
  const words = wordsOf[language];
  const said = refusals.map(({ no }) => sayNoOpening(no, words));

  test.each(refusals)('$no is whole sentences with their figures', ({ no, figures = [] }) => {
    const sentence = sayNoOpening(no, words);
    expect(sentence).toMatch(/^\p{Lu}.*\.$/u);
    for (const figure of figures) expect(sentence).toContain(figure);
  });

  test('no two refusals sound alike', () => {
    expect(new Set(said).size).toBe(said.length);
  });

  test.each(['grace', 'experience', 'certainty', null] as const)('a proposal short by %s', (shortBy) => {
    const air = { expectedHumidity: 81.6, plusMinus: 2.2, settlesInMinutes: 24.1, shortBy };
    const open = sayProposal({ ...air, gapPercent: 20, fromPercent: 10 }, words);
    for (const figure of ['20 %', '82 ± 3 %', '25 min']) expect(open).toContain(figure);
    expect(sayProposal({ ...air, gapPercent: 20, fromPercent: 30 }, words)).not.toBe(open);
    const parts = Object.entries(words.venting.partOfTheWay);
    expect(parts.flatMap(([name, part]) => (open.endsWith(` ${part}`) ? name : []))).toEqual(
      shortBy === null ? [] : [shortBy],
    );
  });
});

test('limp scions: close, mist and hold, of which what is done is left out', () => {
  const limp = (acts: readonly ('close' | 'mist' | 'hold')[], backToPercent: number) =>
    sayNoOpening({ why: 'limp', acts, backToPercent }, wordsOf.en);
  expect(limp(['close', 'mist', 'hold'], 20)).toBe(
    'The scions were reported limp: close the gap to 20 %, mist, hold the batch until they stand erect.',
  );
  expect(limp(['close', 'hold'], 0)).toBe(
    'The scions were reported limp: close the tent, hold the batch until they stand erect.',
  );
  expect(limp(['hold'], 0)).toBe('The scions were reported limp: hold the batch until they stand erect.');
});
