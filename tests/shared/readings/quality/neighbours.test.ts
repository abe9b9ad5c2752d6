import { describe, expect, it } from 'vitest';
import { compareNeighbours, type Neighbour } from '../../../../shared/readings/quality/neighbours.ts';

function probesOf(temperatures: readonly (number | null)[], humidities: readonly (number | null)[] = []): Neighbour[] {
  return temperatures.map((temperature, i) => ({ probeId: `p${i + 1}`, temperature, humidity: humidities[i] ?? null }));
}

function namesOf(probes: readonly Neighbour[]) {
  return compareNeighbours(probes).map((suspect) => `${suspect.probeId} ${suspect.quantity}`);
}

describe('neighbours', () => {
  it.each([
    ['no probe', [], []],
    ['one probe has nobody to disagree with', [25], []],
    ['two at the limit agree', [25, 25.5], []],
    ['two beyond it are both told', [25, 25.6], ['p1 temperature', 'p2 temperature']],
    ['of three the odd one out', [25, 28, 25.2], ['p2 temperature']],
    ['a chain of three has no odd one', [25, 25.4, 25.8], []],
    ['three that all differ are all told', [20, 25, 30], ['p1 temperature', 'p2 temperature', 'p3 temperature']],
    ['of five the two that stand apart', [25, 25.1, 25.2, 27, 27.1], ['p4 temperature', 'p5 temperature']],
    ['a missing value takes no part', [25, null, 25.6], ['p1 temperature', 'p3 temperature']],
  ])('temperature: %s', (_why, temperatures, expected) => {
    expect(namesOf(probesOf(temperatures))).toEqual(expected);
  });

  it.each([
    ['at the limit', [95, 91], []],
    ['beyond it', [95, 90.9], ['p1 humidity', 'p2 humidity']],
    ['of three the odd one out', [95, 96, 88], ['p3 humidity']],
  ])('humidity: %s', (_why, humidities, expected) => {
    expect(
      namesOf(
        probesOf(
          humidities.map(() => null),
          humidities,
        ),
      ),
    ).toEqual(expected);
  });

  it('says by how much, against the median of the others', () => {
    expect(compareNeighbours(probesOf([25, 28, 25.2]))).toEqual([
      { probeId: 'p2', quantity: 'temperature', value: 28, others: 25.1, difference: expect.closeTo(2.9, 9) },
    ]);
  });

  it('goes by other limits when given', () => {
    expect(compareNeighbours(probesOf([25, 25.6]), { temperature: 1, humidity: 4 })).toEqual([]);
  });
});
