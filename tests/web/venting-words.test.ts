import { describe, expect, it } from 'vitest';
import { isVentingShown, stepWords } from '../../web/pages/venting-words.ts';

const NOW_MS = Date.parse('2026-03-06T12:00:00Z');
const step = { low: 72.5, high: 90, opensAt: '2026-03-06T13:00:00Z' };
const time = (at: string) => at.slice(11, 16);

describe('the next opening on the page of a chamber', () => {
  it.each([
    ['before', false],
    ['near', true],
    ['under-way', true],
    ['over', false],
  ] as const)('in the phase %s is shown: %s', (phase, isShown) => {
    expect(isVentingShown({ phase })).toBe(isShown);
  });

  it.each([
    { opensAt: '2026-03-06T12:00:01Z', says: 'The plan wants 72.5–90 %RH from 12:00; not before.', why: 'ahead' },
    { opensAt: '2026-03-06T12:00:00Z', says: 'The plan wants 72.5–90 %RH now.', why: 'just now' },
    { opensAt: '2026-03-06T07:00:00Z', says: 'The plan wants 72.5–90 %RH now.', why: 'long in force' },
  ])('a step $why is said as “$says”', ({ opensAt, says }) => {
    expect(stepWords({ ...step, opensAt }, NOW_MS, time)).toBe(says);
  });
});
