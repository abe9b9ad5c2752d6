// The command `replay`, run as an operator runs it.
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { MINUTE_MS, utcText } from '../../../shared/units.ts';
import { makeTestFolder } from '../../support/open-test-app.ts';
import { runTakewell } from './run-takewell.ts';

const CLOSED_MS = Date.parse('2026-03-02T14:00:00Z');

/** Two healing days, a reading a minute: 22 °C and 96 %RH, with an hour of heat up to 30 °C from 30 h after closing. */
function seriesText(): string {
  const rows = Array.from({ length: 2 * 24 * 60 }, (_, minute) => {
    const heat = Math.max(0, 1 - Math.abs(minute - 31 * 60) / 60) * 8;
    return `${utcText(CLOSED_MS + minute * MINUTE_MS)},${(22 + heat).toFixed(2)},96.00`;
  });
  return ['time,temperature_c,humidity_pct', ...rows, ''].join('\n');
}

async function replay(text: string, ...more: string[]) {
  const file = join(await makeTestFolder(), 'series.csv');
  await writeFile(file, text);
  const plan = ['--profile', 'tomato-common-practice', '--closed-at', utcText(CLOSED_MS), '--zone', 'Europe/Amsterdam'];
  return runTakewell(['replay', '--csv', file, ...plan, ...more]);
}

describe('replay --csv', () => {
  it('tells the alarms that would have come, with exposure day by day, in the shape of the contract', async () => {
    const { stdout, code } = await replay(seriesText(), '--json');
    expect(code).toBe(0);
    const result = JSON.parse(stdout);
    expect(Object.keys(result).sort()).toEqual(['ahead', 'alarms', 'days', 'quality']);
    const heat = result.alarms.filter(({ rule }: { rule: string }) => rule === 'heat');
    expect(heat).toMatchObject([{ priority: 'critical', peak: 30 }]);
    // 28 °C is passed 45 min into the rise, at 8 °C an hour; the alarm follows its delay of a minute, judged at the next reading.
    const passedMs = CLOSED_MS + (30 * 60 + 45) * MINUTE_MS;
    expect(Date.parse(heat[0].occurredAt) - passedMs).toBeGreaterThanOrEqual(MINUTE_MS);
    expect(Date.parse(heat[0].occurredAt) - passedMs).toBeLessThanOrEqual(3 * MINUTE_MS);
    expect(result.days).toHaveLength(2);
    // A triangle of 2 °C above 28 and half an hour wide: half of base times height, in degree-hours.
    expect(result.days[1].degreeHoursAbove['28']).toBeCloseTo(0.5, 2);
    expect(result.days[1].minutesAbove['28']).toBeCloseTo(30, 1);
    expect(result.days[0].temperature.mean).toBeCloseTo(22, 6);
    expect(result.ahead).toMatchObject({ crossings: 1 });
  });

  it('says the same byte for byte when it is asked again', async () => {
    const text = seriesText();
    expect((await replay(text, '--json')).stdout).toBe((await replay(text, '--json')).stdout);
  });

  it('names a column that is missing, and exits 2', async () => {
    const { stderr, stdout, code } = await replay(seriesText().replace('humidity_pct', 'humidity'));
    expect(code).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(/humidity_pct/);
    expect(stderr.trim().split('\n')).toHaveLength(1);
  });
});
