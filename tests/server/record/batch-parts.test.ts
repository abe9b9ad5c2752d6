import { describe, expect, it } from 'vitest';
import { dayParts, stageParts } from '../../../server/record/batch-parts.ts';
import { DAY_MS, HOUR_MS } from '../../../shared/units.ts';

const window = (toMs: number) => ({ fromMs: 0, toMs });

describe('the days of a record', () => {
  it.each([
    { closedMs: null, toMs: DAY_MS, days: [], why: 'not closed yet' },
    { closedMs: HOUR_MS, toMs: HOUR_MS, days: [], why: 'closed at this instant' },
    { closedMs: HOUR_MS, toMs: HOUR_MS + DAY_MS, days: [24], why: 'one whole day' },
    { closedMs: HOUR_MS, toMs: 2 * HOUR_MS + DAY_MS, days: [24, 1], why: 'the second just begun' },
  ])('are $days h: $why', ({ closedMs, toMs, days }) => {
    const parts = dayParts(closedMs, window(toMs));
    expect(parts.map((part) => (part.toMs - part.fromMs) / HOUR_MS)).toEqual(days);
    expect(parts.map(({ day }) => day)).toEqual(days.map((_, i) => i + 1));
  });
});

describe('the stages of a record', () => {
  const spans = [
    { stage: 'loading', startMs: 0, endMs: 1 },
    { stage: 'closed', startMs: 1, endMs: 5 },
    { stage: 'venting', startMs: 5, endMs: 7 },
  ] as const;

  it.each([
    { toMs: 4, parts: ['loading 0–1', 'closed 1–4'], why: 'those still to come are left out' },
    { toMs: 5, parts: ['loading 0–1', 'closed 1–5'], why: 'one that begins at the end is still to come' },
    { toMs: 7, parts: ['loading 0–1', 'closed 1–5', 'venting 5–7'], why: 'the plan just ended' },
    {
      toMs: 9,
      parts: ['loading 0–1', 'closed 1–5', 'venting 5–7', 'after-plan 7–9'],
      why: 'no time after the plan is lost',
    },
  ])('up to $toMs are $parts: $why', ({ toMs, parts }) => {
    const said = stageParts(spans, window(toMs)).map((part) => `${part.stage} ${part.fromMs}–${part.toMs}`);
    expect(said).toEqual(parts);
  });

  it('an open loading lasts to the end of the record', () => {
    const open = [{ stage: 'loading', startMs: 0, endMs: null }] as const;
    expect(stageParts(open, window(3))).toEqual([{ stage: 'loading', fromMs: 0, toMs: 3 }]);
  });
});
