// What the simulated nodes publish is read back by the service's own decoder as what was measured.
import { describe, expect, it } from 'vitest';
import { writePlainJson, writeSenml } from '../../../server/demo/write-payload.ts';
import { ARRIVAL_MS, decodeText, reading } from '../../support/readings.ts';

const measured = [
  reading({ probe: 'canopy-1', timeMs: ARRIVAL_MS - 5_000, temperature: 22.41, humidity: 97.03 }),
  reading({ probe: 'canopy-2', timeMs: ARRIVAL_MS - 5_000, temperature: 22.2, humidity: 96 }),
  reading({ probe: 'canopy-1', timeMs: ARRIVAL_MS, temperature: -0.5, humidity: 100 }),
];

describe.each([
  { form: 'plain JSON', write: writePlainJson },
  { form: 'SenML', write: writeSenml },
])('a payload in $form', ({ write }) => {
  it('is admitted whole: every probe, time and value as measured', () => {
    const { admitted, refused } = decodeText(write(measured));
    expect(refused).toEqual([]);
    expect(admitted).toHaveLength(measured.length);
    expect(admitted).toEqual(expect.arrayContaining(measured));
  });
});
