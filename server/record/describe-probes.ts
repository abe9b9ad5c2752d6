// The probes of a batch with what was counted of each, and their silences.
import type { RecordGap, RecordProbe } from '../../shared/api/record.ts';
import { MINUTE_MS, utcText } from '../../shared/units.ts';
import { viewCalibration } from '../views/calibration-view.ts';
import { describeDisagreement, minutesBetween } from './describe-figures.ts';
import type { SourceFigures } from './measure-batch.ts';
import type { ProbeSource } from './record-sources.ts';

export function describeProbe(source: ProbeSource, figures: SourceFigures): RecordProbe {
  const { readings, lateReadings, quality, disagreement } = figures;
  const { label, id, node, address, place, fromMs, placedToMs, silenceMs, history } = source;
  const span = { from: utcText(fromMs), to: utcText(placedToMs), silenceMinutes: silenceMs / MINUTE_MS };
  return {
    probe: label,
    id,
    node,
    address,
    place,
    ...span,
    readings,
    lateReadings,
    disagreement: describeDisagreement(disagreement),
    quality,
    calibrations: history.map(viewCalibration),
  };
}

export function describeGaps({ label }: ProbeSource, { gaps }: SourceFigures): RecordGap[] {
  return gaps.map(({ fromMs, toMs }) => ({
    probe: label,
    from: utcText(fromMs),
    to: utcText(toMs),
    minutes: minutesBetween(fromMs, toMs),
  }));
}
