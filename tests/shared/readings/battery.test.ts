// The battery of a node: percent or volts, in plain JSON and in SenML (RFC 8428 §12.1), and everything that is not one.
import { describe, expect, it } from 'vitest';
import type { Battery } from '../../../shared/readings/battery.ts';
import { decodePayload } from '../../../shared/readings/decode-payload.ts';

const NOW_MS = Date.parse('2026-03-02T07:00:00Z');

function decode(payload: unknown) {
  return decodePayload({ node: 'n1', payload: new TextEncoder().encode(JSON.stringify(payload)), arrivalMs: NOW_MS });
}

const percent = (level: number): Battery => ({ level, unit: 'percent' });
const volts = (level: number): Battery => ({ level, unit: 'volts' });
const unclear = (level: number): Battery => ({ level, unit: 'unclear' });

const reading = { temperature: 21.4, humidity: 93 };
const senml = [
  { bn: 'canopy/', n: 'temperature', u: 'Cel', v: 21.4 },
  { n: 'humidity', u: '%RH', v: 93 },
];

describe('the battery of a node', () => {
  it.each<[why: string, payload: unknown, battery: Battery | undefined]>([
    ['stands beside a plain reading', { ...reading, battery: 87 }, percent(87)],
    ['is empty', { ...reading, battery: 0 }, percent(0)],
    ['is full', { ...reading, battery: 100 }, percent(100)],
    [
      'is the last told of a resent buffer',
      [
        { ...reading, time: 1772434700, battery: 88 },
        { ...reading, battery: 87 },
      ],
      percent(87),
    ],
    ['is not told', reading, undefined],
    ['is more than full: not in percent', { ...reading, battery: 3700 }, unclear(3700)],
    ['looks like a full lithium cell in volts', { ...reading, battery: 4.18 }, unclear(4.18)],
    ['looks like two empty alkaline cells in volts', { ...reading, battery: 1.9 }, unclear(1.9)],
    ['is nearly empty, in whole percent', { ...reading, battery: 3 }, percent(3)],
    ['is told with a fraction that no small cell has as volts', { ...reading, battery: 12.6 }, percent(12.6)],
    ['is said to be in volts', { ...reading, batteryVolts: 3.71 }, volts(3.71)],
    ['is told in both: volts say more', { ...reading, battery: 62, batteryVolts: 3.71 }, volts(3.71)],
    [
      'is told in the first of two readings',
      [
        { ...reading, battery: 62 },
        { ...reading, probe: 'b' },
      ],
      percent(62),
    ],
    ['is less than empty', { ...reading, battery: -1 }, undefined],
    ['is no number', { ...reading, battery: 'good' }, undefined],
    ['is a record of a pack', [...senml, { n: 'battery', u: '%EL', v: 42 }], percent(42)],
    ['has a name of its own', [...senml, { bn: '', n: 'node-battery', u: '%EL', v: 42 }], percent(42)],
    [
      'is the newest of a pack',
      [...senml, { n: 'battery', u: '%EL', v: 42 }, { n: 'battery', u: '%EL', v: 43, t: -60 }],
      percent(42),
    ],
    ['is a ratio', [...senml, { n: 'battery', u: '/', v: 0.42 }], percent(42)],
    ['is more than full as a ratio', [...senml, { n: 'battery', u: '/', v: 1.2 }], undefined],
    ['is in volts', [...senml, { n: 'battery', u: 'V', v: 3.7 }], volts(3.7)],
    ['is in millivolts (RFC 8798)', [...senml, { n: 'battery', u: 'mV', v: 3700 }], volts(3.7)],
    ['is in a unit that no battery has', [...senml, { n: 'battery', u: 'Cel', v: 21 }], undefined],
  ])('%s', (_, payload, battery) => {
    const admission = decode(payload);
    expect(admission.battery).toEqual(battery);
    // Whatever it says, the reading stands.
    expect(admission.admitted.length).toBeGreaterThan(0);
    expect(admission.refused).toEqual([]);
  });
});
