// The shipped profiles against published-values.md §1: the row "Common practice (tomato, Dutch-style glasshouse work)", which has no
// source beyond practice, and the two starting profiles, which are ours and not published. Limits are read off the running plan.
import { describe, expect, it } from 'vitest';
import { planStages, type StageSpan } from '../../../shared/healing/batch-clock.ts';
import { plannedChecks } from '../../../shared/healing/checks.ts';
import { makeCorridor } from '../../../shared/healing/corridor.ts';
import type { Limit, LimitSet, ProfileDocument } from '../../../shared/healing/profile.ts';
import { findProfileFaults } from '../../../shared/healing/profile-faults.ts';
import { findStandardProfile, standardProfiles } from '../../../shared/healing/standard-profiles.ts';
import { HOUR_MS, utcText } from '../../../shared/units.ts';
import { timesOf } from './sample-plan.ts';

/** Closed on Monday 2 March 2026 at 16:00 in Amsterdam, loaded from 09:00 on. */
const closedMs = Date.parse('2026-03-02T15:00:00Z');
const times = timesOf({ zone: 'Europe/Amsterdam', openedMs: Date.parse('2026-03-02T08:00:00Z'), closedMs });
const noHouse = { temperature: null, humidity: null };

function documentOf(id: string): ProfileDocument {
  const profile = findStandardProfile(id);
  if (profile === null) throw new Error(`no profile ${id}`);
  return profile.document;
}

const spansOf = (document: ProfileDocument) => planStages(document, times, closedMs);

function spanOf(document: ProfileDocument, stage: StageSpan['stage']): { startMs: number; endMs: number } {
  const span = spansOf(document).find((one) => one.stage === stage);
  return { startMs: span?.startMs ?? Number.NaN, endMs: span?.endMs ?? Number.NaN };
}

function limitsAt(
  document: ProfileDocument,
  atMs: number,
  house: { temperature: null; humidity: number | null } = noHouse,
) {
  const corridor = makeCorridor(document, spansOf(document), house)(atMs);
  if (corridor === null) throw new Error('no corridor');
  return corridor;
}

function dueTimes(document: ProfileDocument, id: string): string[] {
  return plannedChecks(document, times, closedMs)
    .filter((check) => check.id === id)
    .map(({ dueMs }) => utcText(dueMs));
}

describe('every shipped profile', () => {
  it('is one of three, each under its own id', () => {
    const ids = standardProfiles.map(({ id }) => id);
    expect(ids).toEqual(['tomato-common-practice', 'solanaceous-warm', 'cucurbit-warm']);
    expect(findStandardProfile('unknown')).toBeNull();
  });

  it.each(standardProfiles)('$id has no fault', ({ document }) => {
    expect(findProfileFaults(document).faults).toEqual([]);
  });

  it.each(standardProfiles)('$id says of each limit where it comes from', ({ document }) => {
    const bases = document.stages.flatMap(({ temperature, humidity }) => [
      ...limitsIn(temperature),
      ...limitsIn(humidity),
    ]);
    const known =
      /^(common practice$|ours$|ours: starting profile|.*(study|abstract|from memory|read second-hand|HortTechnology))/;
    for (const { basis } of bases) expect(basis).toMatch(known);
  });

  it.each(standardProfiles)('$id never calls a saturated tent too wet while it is closed', ({ document }) => {
    const { startMs, endMs } = spanOf(document, 'closed');
    for (let atMs = startMs; atMs < endMs; atMs += HOUR_MS) expect(limitsAt(document, atMs).humidity.high).toBe(100);
  });

  it.each(standardProfiles)(
    '$id makes no alarm of a climate that only just held, at any border or step',
    ({ document }) => {
      const corridor = makeCorridor(document, spansOf(document), noHouse);
      for (const span of spansOf(document).slice(1)) {
        const [before, after] = [corridor(span.startMs - 1), corridor(span.startMs)];
        for (const quantity of ['temperature', 'humidity'] as const) {
          // A millisecond of grace is far below a thousandth.
          expect(after?.[quantity].low).toBeLessThanOrEqual((before?.[quantity].low ?? 0) + 1e-3);
          expect(after?.[quantity].high).toBeGreaterThanOrEqual((before?.[quantity].high ?? 0) - 1e-3);
        }
      }
    },
  );

  it.each(standardProfiles)('$id has, in every check, an answer to "no"', ({ document }) => {
    for (const check of document.checks) {
      expect(check.question).toMatch(/\?$/);
      expect(check.ifNo.length).toBeGreaterThan(20);
    }
  });
});

function limitsIn({ lowLow, low, high, highHigh }: LimitSet): Limit[] {
  return [lowLow, low, high, highHigh].filter((limit) => limit !== undefined);
}

describe('the tomato profile against common practice', () => {
  const tomato = documentOf('tomato-common-practice');

  it('"tent never above 28–29 °C": warns above 28 and is critical above 29, in the tent from closing to the end', () => {
    for (const hours of [0, 50, 111, 120, 150, 170]) {
      expect(limitsAt(tomato, closedMs + hours * HOUR_MS).temperature).toMatchObject({ high: 28, highHigh: 29 });
    }
  });

  it('"grafting room and tent 21–22 °C, 80–90 %RH": wanted and asked for while loading, the limits 2 °C and 5 %RH wider (ours)', () => {
    const { temperature, humidity } = limitsAt(tomato, closedMs - HOUR_MS);
    expect([temperature.low, temperature.high]).toEqual([21 - 2, 22 + 2]);
    expect([humidity.low, humidity.high]).toEqual([80 - 5, 90 + 5]);
    expect(tomato.note).toContain('21–22 °C and 80–90 %RH');
    expect(tomato.checks.find(({ id }) => id === 'air-ready')?.question).toContain('21–22 °C and 80–90 %RH');
  });

  it('"tent never above 28–29 °C": critical above 28 already while it is being loaded', () => {
    expect(limitsAt(tomato, closedMs - HOUR_MS).temperature.highHigh).toBe(28);
  });

  it('"closed at least four days … from the morning of day 5": venting at the first 07:00 after 96 h', () => {
    expect(utcText(spanOf(tomato, 'venting').startMs)).toBe('2026-03-07T06:00:00Z');
    const early = planStages(
      tomato,
      { ...times, openedMs: null, closedMs: Date.parse('2026-03-02T06:00:00Z') },
      closedMs,
    );
    expect(utcText(early[1]?.startMs ?? 0)).toBe('2026-03-06T06:00:00Z');
  });

  it('"vent in several stages to house humidity in two days": four steps of half a day down to house level', () => {
    const { startMs, endMs } = spanOf(tomato, 'venting');
    expect(endMs - startMs).toBe(48 * HOUR_MS);
    const house = { temperature: null, humidity: 62 };
    const lows = [1, 13, 25, 37].map((hour) => limitsAt(tomato, startMs + hour * HOUR_MS, house).humidity.low);
    expect(lows).toEqual([80.5, 71, 61.5, 52]);
    // At the end the house mean lies within the corridor, 10 above low and 15 below high (margins ours).
    const last = limitsAt(tomato, endMs - 1, house).humidity;
    expect([62 - last.low, last.high - 62]).toEqual([10, 15]);
  });

  it('"fully open on day 7": hardening begins on the morning two days after venting', () => {
    expect(utcText(spanOf(tomato, 'hardening').startMs)).toBe('2026-03-09T06:00:00Z');
  });

  it('"two days of hardening": the plan ends two mornings later', () => {
    expect(utcText(spanOf(tomato, 'hardening').endMs)).toBe('2026-03-11T06:00:00Z');
  });

  it('"moving gradually to growing temperature": the low limit comes down over hardening, without a step (numbers ours)', () => {
    const { startMs, endMs } = spanOf(tomato, 'hardening');
    const lows = [startMs, (startMs + endMs) / 2, endMs - 1].map((atMs) => limitsAt(tomato, atMs).temperature.low);
    expect(lows[0]).toBe(20);
    expect(lows[1]).toBeCloseTo(18, 6);
    expect(lows[2]).toBeCloseTo(16, 3);
  });

  it('"film wet inside, looked at about three hours after the last tray"', () => {
    expect(dueTimes(tomato, 'film-wet')).toEqual(['2026-03-02T18:00:00Z']);
  });

  it('grace lets the low limit of humidity reach the closed one by the time the film is looked at (ours)', () => {
    const lows = [0, 1, 2, 3].map((hour) => limitsAt(tomato, closedMs + hour * HOUR_MS).humidity.low);
    expect(lows).toEqual([75, 80, 85, 90]);
  });

  it('"slightly limp is all right up to one day, after that scions must stand erect": asked after one day and on every day', () => {
    const due = dueTimes(tomato, 'scions-erect');
    expect(due.slice(0, 2)).toEqual(['2026-03-03T15:00:00Z', '2026-03-04T15:00:00Z']);
    expect(due).toHaveLength(8);
  });

  it('"on day 4 a look through a gap": in the morning of healing day 4, before venting', () => {
    expect(dueTimes(tomato, 'look-through-gap')).toEqual(['2026-03-06T07:00:00Z']);
  });

  it('asks whether the scions stand after each of the four steps', () => {
    const { startMs } = spanOf(tomato, 'venting');
    const hours = dueTimes(tomato, 'erect-after-step').map((due) => (Date.parse(due) - startMs) / HOUR_MS);
    expect(hours).toEqual([1, 13, 25, 37]);
  });

  it('"fully open on day 7 if they stay erect" and "sun only when the film is off": asked as hardening begins', () => {
    expect(dueTimes(tomato, 'erect-when-open')).toEqual(['2026-03-09T07:00:00Z']);
    expect(dueTimes(tomato, 'film-off-before-sun')).toEqual(['2026-03-09T06:00:00Z']);
  });

  it('"two days of hardening with feed": asked on both', () => {
    expect(dueTimes(tomato, 'feed')).toEqual(['2026-03-09T09:00:00Z', '2026-03-10T09:00:00Z']);
  });

  it('goes through the list of loading as the batch is opened', () => {
    const opening = plannedChecks(tomato, { ...times, closedMs: null }, closedMs);
    expect(opening.map(({ id }) => id)).toEqual([
      'air-ready',
      'film-and-floor-damp',
      'new-blade',
      'hands-and-tools',
      'no-tobacco',
      'no-direct-sun',
    ]);
    expect(new Set(opening.map(({ dueMs }) => utcText(dueMs)))).toEqual(new Set(['2026-03-02T08:00:00Z']));
  });

  it('names in its note what no limit can hold', () => {
    const numbers = [
      '1.5 mm',
      'two days before',
      'the day before',
      '30–40 cm',
      '45°',
      '28–29 °C',
      'up to one day',
      'at least four days',
    ];
    for (const words of numbers) expect(tomato.note.replaceAll(/\s+/g, ' ')).toContain(words);
  });

  it('stays in the healing range of 85–100 %RH while closed (summary of Johnson & Miles 2011, second-hand)', () => {
    expect(limitsAt(tomato, closedMs + 24 * HOUR_MS).humidity).toEqual({
      lowLow: 85,
      low: 90,
      high: 100,
      highHigh: null,
    });
  });

  it('keeps the callus warm: low at 20 °C (Hartmann & Kester, from memory), low-low at 16 (ours)', () => {
    expect(limitsAt(tomato, closedMs + 24 * HOUR_MS).temperature).toMatchObject({ lowLow: 16, low: 20 });
  });
});

/** Each row: hours after closing at 16:00 that lie in the plan's part for that healing day, the steps being at 07:00. */
describe('the solanaceous starting profile', () => {
  const document = documentOf('solanaceous-warm');
  const rows = [
    { day: 'days 1–3', hours: 40, low: 95, high: 100 },
    { day: 'day 4', hours: 91, low: 92, high: 100 },
    { day: 'day 5', hours: 115, low: 90, high: 100 },
    { day: 'day 6', hours: 139, low: 85, high: 90 },
    { day: 'day 7', hours: 163, low: 75, high: 85 },
  ];
  it.each(rows)('wants $low to $high %RH on $day', ({ hours, low, high }) => {
    expect(limitsAt(document, closedMs + hours * HOUR_MS).humidity).toMatchObject({ low, high });
  });

  it.each(rows)('wants 24–27 °C on $day', ({ hours }) => {
    expect(limitsAt(document, closedMs + hours * HOUR_MS).temperature).toMatchObject({ low: 24, high: 27 });
  });

  it('is at house level after day 7, for two days (ours)', () => {
    const { startMs, endMs } = spanOf(document, 'hardening');
    expect(utcText(startMs)).toBe('2026-03-10T06:00:00Z');
    expect(endMs - startMs).toBe(48 * HOUR_MS);
    const { low, high } = limitsAt(document, startMs + 10 * HOUR_MS, { temperature: null, humidity: 60 }).humidity;
    expect([low, high]).toEqual([40, 85]);
  });
});

describe('the cucurbit starting profile', () => {
  const document = documentOf('cucurbit-warm');
  const rows = [
    { day: 'days 1–3', hours: 40, low: 95, high: 100 },
    { day: 'day 4', hours: 91, low: 92, high: 100 },
    { day: 'day 5', hours: 115, low: 90, high: 100 },
    { day: 'day 6', hours: 139, low: 88, high: 92 },
    { day: 'day 7', hours: 163, low: 80, high: 88 },
  ];
  it.each(rows)('wants $low to $high %RH on $day', ({ hours, low, high }) => {
    expect(limitsAt(document, closedMs + hours * HOUR_MS).humidity).toMatchObject({ low, high });
  });

  it('warns below the 18 °C of the night and above 28 °C, and says that days want 25–28', () => {
    expect(limitsAt(document, closedMs + 40 * HOUR_MS).temperature).toMatchObject({ lowLow: 15, low: 18, high: 28 });
    expect(document.note).toContain('25–28 °C by day');
  });

  it('is out on day 9', () => {
    expect(utcText(spanOf(document, 'hardening').startMs)).toBe('2026-03-11T06:00:00Z');
  });
});
