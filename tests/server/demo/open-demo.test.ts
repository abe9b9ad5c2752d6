// The present of the demo, with its own time: the hot tent alarms, waits for somebody, and cools when the crew has come.
import { describe, expect, it } from 'vitest';
import type { AlarmView } from '../../../shared/api/alarms.ts';
import type { BatchView } from '../../../shared/api/batches.ts';
import type { ChamberView } from '../../../shared/api/chambers.ts';
import type { NodeView } from '../../../shared/api/probes.ts';
import { MINUTE_MS, SECOND_MS } from '../../../shared/units.ts';
import { openStillDemo } from '../../support/still-demo.ts';

const heatOf = ({ alarms }: ChamberView): AlarmView | undefined => alarms.find(({ rule }) => rule === 'heat');

describe('openDemo', () => {
  it('has four tents in order at the start, their nodes online, in one form of payload and the other, and nothing refused', async () => {
    const demo = await openStillDemo();
    await demo.goOnTo(10 * SECOND_MS);
    for (const chamber of await demo.chambers()) {
      expect(chamber.climate.healthyProbes).toBe(2);
      expect(chamber.alarms).toEqual([]);
    }
    const nodes = (await demo.api.get<{ items: NodeView[] }>('/nodes')).body.items;
    expect(nodes.map(({ status }) => status)).toEqual(Array(5).fill('online'));
    expect((await demo.api.get<{ items: unknown[] }>('/refused')).body.items).toEqual([]);
  });

  it('lets the hot tent alarm within two minutes, and cools it when somebody logs an opened gap', async () => {
    const demo = await openStillDemo();
    await demo.goOnTo(2 * MINUTE_MS);
    const raised = await demo.hot();
    expect(heatOf(raised)?.state).toBe('unacknowledged');
    // Past 29 °C it gets worse once more, which would undo an acknowledgement.
    await demo.goOnTo(3 * MINUTE_MS);
    expect(heatOf(await demo.hot())).toMatchObject({ state: 'unacknowledged', priority: 'critical' });
    await demo.api.post(`/alarms/${heatOf(raised)?.id}/acknowledge`);
    await demo.api.post(`/batches/${raised.batch?.id}/log`, { kind: 'gap', gapPercent: 30 });
    await demo.goOnTo(9 * MINUTE_MS);
    const cooled = await demo.hot();
    expect(heatOf(cooled)).toBeUndefined();
    expect(cooled.climate.hottest).toBeLessThan(27);
    const others = (await demo.chambers()).filter(({ name }) => name !== 'Tent 1');
    expect(others.flatMap(({ alarms }) => alarms)).toEqual([]);
  });

  it('sends the crew by itself after six minutes, who log what they do and close the tent again', async () => {
    const demo = await openStillDemo();
    await demo.goOnTo(6 * MINUTE_MS - 5 * SECOND_MS);
    const batchId = (await demo.hot()).batch?.id;
    const gaps = async () => {
      const { body } = await demo.api.get<BatchView>(`/batches/${batchId}`);
      return body.log.filter(({ kind }) => kind === 'gap').map(({ gapPercent, person }) => ({ gapPercent, person }));
    };
    expect(await gaps()).toEqual([]);
    await demo.goOnTo(6 * MINUTE_MS);
    const opened = { gapPercent: 35, person: 'Demo crew A' };
    expect(await gaps()).toEqual([opened]);
    await demo.goOnTo(46 * MINUTE_MS);
    const logged = await gaps();
    expect(logged).toHaveLength(2);
    expect(logged).toEqual(expect.arrayContaining([opened, { gapPercent: 0, person: 'Demo crew A' }]));
    expect(heatOf(await demo.hot())?.level ?? 0).toBe(0);
  });

  it('goes on when somebody finishes the batch of the hot tent', async () => {
    const demo = await openStillDemo();
    const batchId = (await demo.hot()).batch?.id;
    await demo.api.post(`/batches/${batchId}/finish`, { takenPlants: 0, note: 'Lost to the heat.' });
    await demo.goOnTo(7 * MINUTE_MS);
    const { climate, batch, alarms } = await demo.hot();
    expect({ batch, alarms }).toEqual({ batch: null, alarms: [] });
    expect(climate.hottest).toBeGreaterThan(29);
  });
});
