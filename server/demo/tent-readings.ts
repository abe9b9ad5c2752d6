// What a simulated tent measured, as readings of its node: which of its probes said what.
import type { IncomingReading } from '../../shared/readings/reading.ts';
import type { DemoChamber, DemoNursery } from './demo-scenario.ts';
import type { ChamberReadings } from './live-chamber.ts';

/** One reading for each probe of the tent. */
export function readTent(tent: DemoChamber, { timeMs, canopy, film }: ChamberReadings): IncomingReading[] {
  const canopyLeft = [...canopy];
  return tent.probes.flatMap(({ address, place }) => {
    const values = place === 'film' ? film : canopyLeft.shift();
    return values == null ? [] : [{ node: tent.node, probe: address, timeMs, ...values }];
  });
}

/** The reading of the house probe. */
export function readHouse({ house }: DemoNursery, readings: ChamberReadings): IncomingReading {
  return { node: house.node, probe: house.probe.address, timeMs: readings.timeMs, ...readings.house };
}
