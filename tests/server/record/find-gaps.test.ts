// Silences of a probe, at both sides of the limit and at both ends of the span.
import { describe, expect, it } from 'vitest';
import { GapFinder } from '../../../server/record/find-gaps.ts';

const cases: [string, number[], [number, number][]][] = [
  ['heard all the time: no gap', [0, 10, 20, 30], []],
  ['a silence of exactly the allowed 10 is no gap', [0, 10, 20, 30], []],
  ['a silence of 11 is one', [0, 10, 21, 30], [[10, 21]]],
  ['silent from the start', [15, 25], [[0, 15]]],
  ['silent to the end', [10, 19], [[19, 30]]],
  ['never heard: all of it', [], [[0, 30]]],
];

describe('GapFinder', () => {
  it.each(cases)('%s', (_, heard, gaps) => {
    const finder = new GapFinder({ fromMs: 0, toMs: 30, silenceMs: 10 });
    for (const ms of heard) finder.hear(ms);
    expect(finder.result().map(({ fromMs, toMs }) => [fromMs, toMs])).toEqual(gaps);
  });
});
