// What has corrected a probe, the newest beginning first. Nothing here can be taken back: a later entry takes the place of an earlier one.

import type { CalibrationView } from '../../shared/api/calibrations.ts';
import { calls } from '../calls.ts';
import { slowNowMs } from '../clock.ts';
import { words } from '../late-strings.ts';
import { LoadState } from '../parts/load-state.tsx';
import { useLoad } from '../parts/use-load.ts';
import { numberText } from '../quantities.ts';
import { zone } from '../session.ts';
import { dayAndTime } from '../when.ts';

const { calibration } = words;

/** "+0.3", "−1.5", "0". */
function signed(value: number): string {
  return value > 0 ? `+${value}` : String(value).replace('-', '−');
}

/** What an entry does, part by part. */
function sayCalibration({ temperature, humidity }: Pick<CalibrationView, 'temperature' | 'humidity'>): string[] {
  const warmth = temperature === null ? [] : [calibration.temperatureBy(signed(temperature.offset))];
  if (humidity === null) return warmth;
  if (!Array.isArray(humidity)) return [...warmth, calibration.humidityBy(signed(humidity.offset))];
  const points = humidity.map(({ measured, reference }) =>
    calibration.point(numberText(measured, 1), numberText(reference, 1)),
  );
  return [...warmth, ...points];
}

function Entry({ entry }: { readonly entry: CalibrationView }) {
  const when = (at: string) => dayAndTime(Date.parse(at), slowNowMs.value, zone.value);
  return (
    <li>
      <b>{calibration.fromWhen(when(entry.from))}</b>: {sayCalibration(entry).join(', ')}
      {entry.note !== '' && `; ${entry.note}`}
      <span class="details"> {calibration.entered(entry.enteredBy, when(entry.enteredAt))}</span>
    </li>
  );
}

/** `saved` counts up when an entry was added. */
export function CalibrationHistory({ probeId, saved }: { readonly probeId: string; readonly saved: number }) {
  const history = useLoad(() => calls.calibrations(probeId), `${probeId} ${saved}`);
  if (history.data === undefined) return <LoadState {...history} />;
  if (history.data.length === 0) return <p class="quiet-line">{calibration.none}</p>;
  return (
    <>
      <h4>{calibration.history}</h4>
      <ul>
        {history.data.toReversed().map((entry) => (
          <Entry key={entry.id} entry={entry} />
        ))}
      </ul>
    </>
  );
}
