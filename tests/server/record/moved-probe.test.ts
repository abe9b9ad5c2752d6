// Readings dated at the very instant in which their probe was moved or taken away, through the whole service: each stands in the record once.
import { describe, expect, it } from 'vitest';
import type { ClimateSeries } from '../../../shared/api/chambers.ts';
import { MINUTE_MS } from '../../../shared/units.ts';
import { openBatch, openTent, TENT_MS, type Tent } from '../../support/open-tent.ts';

/** Place and temperature of every reading in the record, in its order. */
async function readingsOf(tent: Tent, batchId: string): Promise<string[]> {
  const { body } = await tent.api.text(`/batches/${batchId}/record.csv`);
  const readings = body.split('\r\n').filter((line) => line.startsWith('reading,'));
  return readings.map((line) => line.split(',').slice(4, 6).join(' '));
}

describe('a reading at the instant of a change of place', () => {
  it('is in the record once: of the new place after a move, of the old one when the probe was taken away', async () => {
    const tent = await openTent();
    const batch = await openBatch(tent);
    await tent.measure(21.1);
    tent.clock.advance(MINUTE_MS);
    await tent.measure(22.2);
    await tent.api.patch(`/probes/${tent.probeId}`, { place: 'film' });
    tent.clock.advance(MINUTE_MS);
    await tent.measure(23.3);
    await tent.api.patch(`/probes/${tent.probeId}`, { place: null });
    tent.clock.advance(MINUTE_MS);
    await tent.measure(24.4);
    expect(await readingsOf(tent, batch.id)).toEqual(['canopy 21.1', 'film 22.2', 'film 23.3']);
  });

  it('is in the chart as it is in the record', async () => {
    const tent = await openTent();
    await tent.measure(21.1);
    tent.clock.advance(MINUTE_MS);
    await tent.measure(22.2);
    await tent.api.patch(`/probes/${tent.probeId}`, { place: null });
    const [from, to] = [TENT_MS, TENT_MS + 10 * MINUTE_MS].map((ms) => new Date(ms).toISOString());
    const path = `/chambers/${tent.chamberId}/climate?from=${from}&to=${to}&points=10`;
    const { body } = await tent.api.get<ClimateSeries>(path);
    expect(body.temperature.mean.slice(0, 3)).toEqual([21.1, 22.2, null]);
  });
});
