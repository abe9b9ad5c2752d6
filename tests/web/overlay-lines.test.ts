import { describe, expect, it } from 'vitest';
import { lineStyle, lineStyles, overlayRows } from '../../web/strip/overlay-lines.ts';

describe('lines laid over each other', () => {
  it('are eight, no two with the same dash or the same ink', () => {
    expect(lineStyles).toHaveLength(8);
    expect(new Set(lineStyles.map(({ dash }) => dash.join())).size).toBe(8);
    expect(new Set(lineStyles.map(({ ink }) => ink)).size).toBe(8);
    expect(lineStyle(8)).toEqual(lineStyle(0));
  });
});

describe('their values as rows', () => {
  const batch = (humidity: (number | null)[]) => ({
    id: 'a',
    code: 'A',
    closedAt: '',
    humidity,
    temperature: humidity,
  });

  it('are means of half days, a row for each that has begun', () => {
    const hours = [3, 9, 15, 21, 27];
    const rows = overlayRows({ hours, batches: [batch([90, 92, 80, null, 70])] }, 12);
    expect(rows.map(({ fromHour }) => fromHour)).toEqual([0, 12, 24]);
    expect(rows.map(({ batches }) => batches[0]?.humidity)).toEqual([91, 80, 70]);
  });

  it('keep a gap where nothing is known', () => {
    const rows = overlayRows({ hours: [6, 18], batches: [batch([null, 88]), batch([1, 2])] }, 12);
    expect(rows[0]?.batches.map(({ humidity }) => humidity)).toEqual([null, 1]);
  });

  it('are none without a cell', () => {
    expect(overlayRows({ hours: [], batches: [] }, 12)).toEqual([]);
  });
});
