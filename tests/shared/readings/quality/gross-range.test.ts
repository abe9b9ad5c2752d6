import { describe, expect, it } from 'vitest';
import { grossRange } from '../../../../shared/readings/quality/gross-range.ts';
import { defaultQualityLimits } from '../../../../shared/readings/quality/quality-limits.ts';

describe('gross range with the default limits', () => {
  it.each([
    ['a broken probe', 'temperature', -40.1, 4],
    ['the coldest a probe can measure is still only doubted', 'temperature', -40, 3],
    ['frozen house', 'temperature', -5.1, 3],
    ['winter house', 'temperature', -5, 1],
    ['healing', 'temperature', 24, 1],
    ['a tent at 45 °C is real heat and must stay in the heat watch', 'temperature', 45, 1],
    ['the hottest a tent gets', 'temperature', 60, 1],
    ['hotter than any tent', 'temperature', 60.1, 3],
    ['the end of the sensor span', 'temperature', 80, 3],
    ['power-on value of a common probe', 'temperature', 85, 4],
    ['below nothing', 'humidity', -0.1, 4],
    ['a loose wire', 'humidity', 0, 3],
    ['the driest believed', 'humidity', 5, 1],
    ['saturated', 'humidity', 100, 1],
    ['beyond saturated', 'humidity', 100.1, 3],
    ['as far as an honest sensor overshoots', 'humidity', 110, 3],
    ['far beyond', 'humidity', 110.1, 4],
    ['nothing measured', 'humidity', null, 9],
  ] as const)('%s: %s %s → %i', (_why, quantity, value, flag) => {
    expect(grossRange(value, defaultQualityLimits[quantity].grossRange)).toBe(flag);
  });
});
