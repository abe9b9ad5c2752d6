// An entry of a probe's calibration history as it is sent to people and written into records.
import type { CalibrationView } from '../../shared/api/calibrations.ts';
import { utcText } from '../../shared/units.ts';
import type { StoredCalibration } from '../store/store.ts';

export function viewCalibration({ id, correction, note, person, enteredMs }: StoredCalibration): CalibrationView {
  const entered = {
    id: String(id),
    from: utcText(correction.fromMs),
    temperature: correction.temperature ?? null,
    note,
    enteredAt: utcText(enteredMs),
    enteredBy: person,
  };
  if (correction.kind === 'offset') return { kind: 'offset', ...entered, humidity: correction.humidity ?? null };
  const [one, other] = correction.humidity;
  return { kind: 'two-point', ...entered, humidity: [{ ...one }, { ...other }] };
}
