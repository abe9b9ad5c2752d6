// How calibration enters a record, in words and in its readings.
import type { Reading } from '../../shared/readings/reading.ts';

/** The rule in words, for the record. */
export const calibrationRule =
  'Values are those of the probes, corrected from the date of each calibration listed with a probe: an offset is added to the raw value; two ' +
  'points correct humidity along the straight line through them, and no correction carries humidity over 100 or under 0. Of each quantity ' +
  'the calibration that began last holds. Where a value was changed the raw one stands beside it. Quality flags are of the raw values. The ' +
  'record of a finished batch counts what was entered before it was finished.';

/** The raw values that a calibration has changed; null where it has changed nothing. */
export function changedByCalibration(reading: Reading, raw: Reading): Pick<Reading, 'temperature' | 'humidity'> {
  return {
    temperature: raw.temperature === reading.temperature ? null : raw.temperature,
    humidity: raw.humidity === reading.humidity ? null : raw.humidity,
  };
}
