// The list of chambers is put together once a second at most: nobody may be told an old value for it. Time stands still in these tests.
import { describe, expect, it } from 'vitest';
import type { ChamberView } from '../../../shared/api/chambers.ts';
import { MINUTE_MS } from '../../../shared/units.ts';
import { openBatch, openHotTent, openTent, type Tent } from '../../support/open-tent.ts';

async function listed(tent: Tent): Promise<ChamberView | undefined> {
  const { body, status } = await tent.api.get<{ items: ChamberView[]; nextCursor: null }>('/chambers');
  expect(status).toBe(200);
  expect(body.nextCursor).toBeNull();
  return body.items.find(({ id }) => id === tent.chamberId);
}

describe('the list of chambers says what each chamber says', () => {
  it('when it is asked for, and again within the same second', async () => {
    const tent = await openHotTent();
    const one = await tent.chamber();
    expect(await listed(tent)).toEqual(one);
    expect(await listed(tent)).toEqual(one);
    expect(one.alarms).toHaveLength(1);
  });

  it('at once after each thing that changes it, though no time has passed', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await tent.measure(23, 95);
    expect((await listed(tent))?.climate.temperature).toBe(23);
    const { api, chamberId, probeId } = tent;
    const { batch } = await tent.chamber();
    const changes: [why: string, act: () => Promise<unknown>][] = [
      ['a new name', () => api.patch(`/chambers/${chamberId}`, { name: 'Tent by the door' })],
      ['a gap that was opened', () => api.post(`/batches/${batch?.id}/log`, { kind: 'gap', gapPercent: 30 })],
      ['a hold', () => api.post(`/batches/${batch?.id}/hold`, {})],
      [
        'a probe of the house',
        () => api.post('/probes', { nodeId: 'n1', address: 'h', chamberId: null, place: 'house' }),
      ],
      ['what that probe hears', () => tent.measure(19, 60, 'h')],
      ['a probe taken out of service', () => api.patch(`/probes/${probeId}`, { outOfService: true })],
    ];
    for (const [why, act] of changes) {
      const before = await listed(tent);
      await act();
      expect(await listed(tent), why).toEqual(await tent.chamber());
      if (why !== 'a probe of the house') expect(await listed(tent), why).not.toEqual(before);
    }
  });

  it('and as time goes on: a value that has grown old is gone', async () => {
    const tent = await openTent();
    await tent.measure(23, 95);
    expect((await listed(tent))?.climate.temperature).toBe(23);
    tent.clock.advance(30 * MINUTE_MS);
    expect((await listed(tent))?.climate.temperature).toBeNull();
  });
});
