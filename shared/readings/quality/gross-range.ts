// Gross range test: is the value one the probe can measure, and one this job can produce? It looks at one value only.
import { FLAG, type Flag } from '../reading.ts';
import type { GrossRangeLimits } from './quality-limits.ts';

/** Outside the sensor span → fail, outside the user span → suspect, both spans inclusive; no value → missing (QARTOD test 4). */
export function grossRange(value: number | null, limits: GrossRangeLimits): Flag {
  if (value === null) return FLAG.missing;
  if (value < limits.sensorLow || value > limits.sensorHigh) return FLAG.fail;
  if (value < limits.userLow || value > limits.userHigh) return FLAG.suspect;
  return FLAG.pass;
}
