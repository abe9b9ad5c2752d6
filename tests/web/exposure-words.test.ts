import { afterEach, describe, expect, it } from 'vitest';
import type { ExposurePart } from '../../shared/api/exposure.ts';
import { cellsOf, namedParts } from '../../web/pages/exposure-words.ts';
import { temperatureUnit } from '../../web/temperature-unit.ts';

afterEach(() => {
  temperatureUnit.value = '°C';
});

const nothing = { hours: 0, judgedHours: 0, share: null };
const part: ExposurePart = {
  ...{ from: '2026-03-02T06:00:00Z', to: '2026-03-03T06:00:00Z' },
  temperature: { mean: 22.44, min: 20, max: 29.96 },
  humidity: { mean: 94.6, min: 88.2, max: 99.9 },
  insideCorridor: { temperature: nothing, humidity: { hours: 22, judgedHours: 24, share: 22 / 24 } },
  ...{ minutesAbove: { '28': 61.5, '29': 12.2 }, degreeHoursAbove: { '28': 1.04 }, vpdKpaHours: 3.456 },
  unknownHours: 0.25,
};
const texts = (one: ExposurePart) => cellsOf(one).map(([, text]) => text);

describe('the table of exposure', () => {
  it('has a row for every stage, every day and the whole, in this order', () => {
    const view = {
      batchId: 'b',
      stages: [
        { ...part, stage: 'closed' as const },
        { ...part, stage: 'after-plan' as const },
      ],
      days: [{ ...part, day: 1 }],
      whole: part,
    };
    expect(namedParts(view).map(({ name }) => name)).toEqual(['closed', 'after the plan', 'day 1', 'since closing']);
    expect(namedParts({ ...view, whole: null }).at(-1)?.name).toBe('day 1');
  });

  it('says each figure with the digits it deserves', () => {
    expect(texts(part)).toEqual([...['22.4 (20.0–30.0)', '95 (88–100)', '92 %', '62', '12', '1.0', '3.5', '0.3']]);
  });

  it('says temperatures, limits and degree-hours in °F to who reads that', () => {
    temperatureUnit.value = '°F';
    expect(cellsOf(part).filter(([name]) => name.includes('°'))).toEqual([
      ['°F, mean (lowest–highest)', '72.4 (68.0–85.9)'],
      ['Minutes above 82.4 °F', '62'],
      ['Minutes above 84.2 °F', '12'],
      ['Degree-hours above 82.4 °F', '1.9'],
    ]);
  });

  it('shows what is not known as a dash and never as zero', () => {
    const spread = { mean: null, min: null, max: null };
    const blank = { ...part, temperature: spread, humidity: spread, unknownHours: 24 };
    const unknown = texts({ ...blank, insideCorridor: { temperature: nothing, humidity: nothing } });
    expect(unknown.slice(0, 3)).toEqual(['–', '–', '–']);
    expect(unknown.at(-1)).toBe('24.0');
  });
});
