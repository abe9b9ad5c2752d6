import { describe, expect, it } from 'vitest';
import { cellAfterKey } from '../../web/strip/overlay-keys.ts';
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

describe('their cross-hair by keys', () => {
  const cells = (count: number, hours: number) => Array.from({ length: count }, (_, cell) => (cell + 0.5) * hours);

  it.each<[why: string, key: string, isDay: boolean, from: number | null, to: number | null | undefined]>([
    ['begins at the first cell', 'ArrowRight', false, null, 0],
    ['begins at the last cell when it goes back', 'ArrowLeft', false, null, 99],
    ['goes on by one', 'ArrowRight', false, 3, 4],
    ['goes on by a day', 'ArrowRight', true, 3, 27],
    ['stops at the last cell', 'ArrowRight', true, 90, 99],
    ['stops at the first cell', 'ArrowLeft', true, 3, 0],
    ['goes to the first cell', 'Home', false, 50, 0],
    ['goes to the last cell', 'End', false, 50, 99],
    ['is put away', 'Escape', false, 50, null],
    ['leaves other keys alone', 'Tab', false, 50, undefined],
  ])('%s', (_, key, isDay, from, to) => {
    expect(cellAfterKey(key, isDay, from, cells(100, 1))).toBe(to);
  });

  it('leaves all keys alone where there is no cell', () => {
    expect(cellAfterKey('Home', false, null, [])).toBeUndefined();
  });

  it('goes by a day whatever a cell is long', () => {
    expect(cellAfterKey('ArrowRight', true, 0, cells(100, 0.5))).toBe(48);
    expect(cellAfterKey('ArrowRight', true, 0, cells(100, 48))).toBe(1);
  });
});
