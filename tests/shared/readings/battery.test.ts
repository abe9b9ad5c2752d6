// The battery of a node: percent in plain JSON, %EL in SenML (RFC 8428 §12.1), and everything that is not one.
import { describe, expect, it } from 'vitest';
import { decodePayload } from '../../../shared/readings/decode-payload.ts';

const NOW_MS = Date.parse('2026-03-02T07:00:00Z');

function decode(payload: unknown) {
  return decodePayload({ node: 'n1', payload: new TextEncoder().encode(JSON.stringify(payload)), arrivalMs: NOW_MS });
}

const reading = { temperature: 21.4, humidity: 93 };
const senml = [
  { bn: 'canopy/', n: 'temperature', u: 'Cel', v: 21.4 },
  { n: 'humidity', u: '%RH', v: 93 },
];

describe('the battery of a node', () => {
  it.each<[why: string, payload: unknown, battery: number | undefined]>([
    ['stands beside a plain reading', { ...reading, battery: 87 }, 87],
    ['is empty', { ...reading, battery: 0 }, 0],
    ['is full', { ...reading, battery: 100 }, 100],
    [
      'is the last told of a resent buffer',
      [
        { ...reading, time: 1772434700, battery: 88 },
        { ...reading, battery: 87 },
      ],
      87,
    ],
    ['is not told', reading, undefined],
    ['is more than full: not in percent', { ...reading, battery: 3700 }, undefined],
    ['is less than empty', { ...reading, battery: -1 }, undefined],
    ['is no number', { ...reading, battery: 'good' }, undefined],
    ['is a record of a pack', [...senml, { n: 'battery', u: '%EL', v: 42 }], 42],
    ['has a name of its own', [...senml, { bn: '', n: 'node-battery', u: '%EL', v: 42 }], 42],
    [
      'is the newest of a pack',
      [...senml, { n: 'battery', u: '%EL', v: 42 }, { n: 'battery', u: '%EL', v: 43, t: -60 }],
      42,
    ],
    ['is in volts', [...senml, { n: 'battery', u: 'V', v: 3.7 }], undefined],
  ])('%s', (_, payload, battery) => {
    const admission = decode(payload);
    expect(admission.battery).toBe(battery);
    // Whatever it says, the reading stands.
    expect(admission.admitted.length).toBeGreaterThan(0);
    expect(admission.refused).toEqual([]);
  });
});
