import { describe, expect, test } from 'vitest';
import { HOUR_MS } from '../../../shared/units.ts';
import { limpAnswer } from '../../../shared/venting/limp-answer.ts';

const gap = (hours: number, gapPercent: number) => ({ atMs: hours * HOUR_MS, kind: 'gap', gapPercent });
const said = (hours: number, kind: string) => ({ atMs: hours * HOUR_MS, kind, gapPercent: null });

describe('no answer', () => {
  test.each([
    { log: [], why: 'nothing was said' },
    { log: [gap(1, 20), said(2, 'erect')], why: 'they stand erect' },
    { log: [said(1, 'limp'), said(2, 'erect')], why: 'they were limp and stand again' },
    { log: [said(2, 'erect'), said(1, 'limp')], why: 'whatever the order of the log' },
  ])('$why', ({ log }) => {
    expect(limpAnswer(log)).toBeNull();
  });
});

describe('close, mist, hold', () => {
  test.each([
    { log: [gap(1, 20), said(2, 'limp')], back: 0, why: 'back to closed after the first step' },
    { log: [gap(1, 20), gap(5, 35), said(6, 'limp')], back: 20, why: 'back to the gap before the last step' },
    {
      log: [gap(1, 20), said(2, 'erect'), gap(5, 35), gap(8, 50), said(9, 'limp')],
      back: 20,
      why: 'back to the gap under which they were last seen erect',
    },
    {
      log: [gap(1, 20), gap(5, 35), said(6, 'erect'), said(9, 'limp')],
      back: 20,
      why: 'erect under this very gap an hour after opening, and limp now: the one before',
    },
    {
      log: [gap(1, 40), gap(5, 20), gap(8, 30), said(9, 'limp')],
      back: 20,
      why: 'the last that was narrower, not the first',
    },
    { log: [said(1, 'limp')], back: 0, why: 'the tent was never opened' },
    {
      log: [said(1, 'erect'), gap(2, 20), gap(5, 35), said(6, 'limp'), said(7, 'limp')],
      back: 0,
      why: 'they were erect while it was closed; the first report counts',
    },
  ])('$why', ({ log, back }) => {
    expect(limpAnswer(log)?.backToPercent).toBe(back);
  });

  test.each([
    { more: [], acts: ['close', 'mist', 'hold'], why: 'nothing done yet' },
    { more: [gap(6.1, 20)], acts: ['mist', 'hold'], why: 'the gap is back' },
    { more: [gap(6.1, 0)], acts: ['mist', 'hold'], why: 'or further' },
    { more: [said(6.2, 'mist')], acts: ['close', 'hold'], why: 'misted, not closed' },
    { more: [gap(6.1, 20), said(6.2, 'mist')], acts: ['hold'], why: 'both done: wait until they stand' },
    { more: [gap(6.1, 20), gap(7, 30)], acts: ['close', 'mist', 'hold'], why: 'opened again in spite of it' },
  ])('$acts: $why', ({ more, acts }) => {
    const log = [gap(1, 20), said(2, 'erect'), said(3, 'mist'), gap(5, 35), said(6, 'limp'), ...more];
    expect(limpAnswer(log)).toMatchObject({ acts, backToPercent: 20, sinceMs: 6 * HOUR_MS });
  });
});
