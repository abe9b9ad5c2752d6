// Times in UTC, and as the clocks of a site showed them, over shifts of daylight saving time.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeTimeTexts } from '../../../server/record/time-texts.ts';
import { HOUR_MS, MINUTE_MS, utcText } from '../../../shared/units.ts';

const cases: [string, string, string, string][] = [
  ['summer time', 'Europe/Amsterdam', '2026-10-25T00:30:00Z', '2026-10-25 02:30:00'],
  ['the same wall time again, an hour later', 'Europe/Amsterdam', '2026-10-25T01:30:00Z', '2026-10-25 02:30:00'],
  ['the last second of summer time', 'Europe/Amsterdam', '2026-10-25T00:59:59.999Z', '2026-10-25 02:59:59'],
  ['the first instant of winter time', 'Europe/Amsterdam', '2026-10-25T01:00:00Z', '2026-10-25 02:00:00'],
  ['the hour that spring leaves out', 'Europe/Amsterdam', '2026-03-29T01:00:00Z', '2026-03-29 03:00:00'],
  ['a zone with half an hour', 'Asia/Kolkata', '2026-03-02T18:45:00Z', '2026-03-03 00:15:00'],
  ['UTC, which never shifts', 'UTC', '2026-03-02T07:00:05Z', '2026-03-02 07:00:05'],
];

describe('local times', () => {
  it.each(cases)('%s', (_, zone, time, expected) => {
    expect(makeTimeTexts(zone).local(Date.parse(time))).toBe(expected);
  });

  it('says the same whatever instant it was asked for before', () => {
    const start = Date.parse('2026-10-24T22:00:00Z');
    const instants = Array.from(
      { length: 40 },
      (_, i) => start + ((i * 7) % 40) * 15 * MINUTE_MS + (i % 3) * 400 * 24 * HOUR_MS,
    );
    const kept = makeTimeTexts('Europe/Amsterdam');
    expect(instants.map(kept.local)).toEqual(instants.map((ms) => makeTimeTexts('Europe/Amsterdam').local(ms)));
  });
});

describe('UTC times', () => {
  it('are written as everywhere else in the program', () => {
    const { utc } = makeTimeTexts('Europe/Amsterdam');
    const years = { min: Date.UTC(1960, 0, 1), max: Date.UTC(2100, 0, 1) };
    fc.assert(
      fc.property(fc.integer(years), fc.array(fc.integer({ min: -70_000, max: 70_000 })), (startMs, steps) => {
        for (const ms of [startMs, ...steps.map((step) => startMs + step)]) expect(utc(ms)).toBe(utcText(ms));
      }),
    );
  });
});
