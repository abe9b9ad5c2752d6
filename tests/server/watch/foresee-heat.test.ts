// The forecast in the running watch: it learns from admitted readings only, and only from what was stored.
import { describe, expect, it } from 'vitest';
import { openSite } from '../../../server/site.ts';
import { openProbeBook } from '../../../server/watch/probe-book.ts';
import { silentTelling } from '../../../server/watch/teller.ts';
import { openWatch } from '../../../server/watch/watch.ts';
import type { ClimateSeries } from '../../../shared/api/chambers.ts';
import { noHeatMemory } from '../../../shared/forecast/heat-ahead.ts';
import { HOUR_MS, MINUTE_MS, utcText } from '../../../shared/units.ts';
import { openBatch, openTent, type Tent } from '../../support/open-tent.ts';

/** A reading a minute at each of these temperatures. */
async function measureEach(tent: Tent, temperatures: readonly number[]): Promise<void> {
  for (const temperature of temperatures) {
    tent.clock.advance(MINUTE_MS);
    await tent.measure(temperature);
  }
}

const resting = Array.from({ length: 30 }, (_, i) => 25 + (i % 3) / 50);

describe('heat ahead', () => {
  it('is told of a tent that warms, with the time it has left, before it is hot', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await measureEach(tent, resting);
    expect(await tent.alarms()).toEqual([]);
    await measureEach(tent, [25.5, 26, 26.5, 27]);
    const [warning, ...others] = await tent.alarms();
    expect(others).toEqual([]);
    expect(warning).toMatchObject({ rule: 'heat-ahead', priority: 'medium', value: 27, limit: 28 });
    expect(warning?.sentence).toMatch(
      /^↑ Heat ahead: 27\.0 °C, reaches 28 °C in about [1-4] min \(\d+( or more|–\d+)\)$/,
    );
  });

  it('makes way for heat', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await measureEach(tent, [...resting, 25.5, 26, 26.5, 27, 27.5, 28.1, 28.4, 28.6]);
    expect((await tent.alarms()).map(({ rule }) => rule)).toEqual(['heat']);
    const to = utcText(tent.clock.nowMs());
    const from = utcText(tent.clock.nowMs() - HOUR_MS);
    const { body } = await tent.api.get<ClimateSeries>(
      `/chambers/${tent.chamberId}/climate?from=${from}&to=${to}&points=60`,
    );
    const marks = body.events.filter(({ kind }) => kind === 'alarm');
    expect(marks.map(({ what, until }) => [what, until !== null])).toEqual([
      ['heat-ahead', true],
      ['heat', false],
    ]);
  });

  it('does not learn from a failed reading', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await measureEach(tent, [...resting, 85, 85, 85]);
    expect((await tent.alarms()).map(({ rule }) => rule)).not.toContain('heat-ahead');
  });
});

describe('what the watch remembers of the heat', () => {
  it('moves on only when the decision is made true: one that could not be stored never happened', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await tent.measure(25);
    const { store } = tent.app;
    const nowMs = tent.clock.nowMs();
    const probes = await openProbeBook(store, nowMs);
    const watch = await openWatch({ store, site: await openSite(store), probes, telling: silentTelling });
    const remembered = () => watch.chamber(tent.chamberId)?.trends.heat;
    const decision = watch.observe([tent.chamberId], probes.all(), nowMs);
    expect(remembered()).toBe(noHeatMemory);
    decision.apply();
    expect(remembered()).toMatchObject({ trend: { timeMs: nowMs, value: 25 } });
    const before = remembered();
    watch.observe([tent.chamberId], probes.all(), nowMs + MINUTE_MS).apply();
    expect(remembered(), 'a round without a new reading teaches nothing').toBe(before);
  });
});
