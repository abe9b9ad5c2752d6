// How long an alarm has stood, how far it went, and who has taken it.
import type { AlarmView } from '../../shared/api/alarms.ts';
import { isAboutTemperature } from '../alarm-sentence.ts';
import { withHumidity, withTemperature } from '../quantities.ts';
import { words } from '../strings.ts';
import { takenWords } from '../taken-words.ts';
import { dayAndTime } from '../when.ts';

interface Props {
  readonly alarm: AlarmView;
  readonly nowMs: number;
  readonly zone: string;
}

function peakWords(alarm: AlarmView, at: (time: string) => string): string | null {
  if (alarm.peak === null || alarm.peakAt === null) return null;
  const isTemperature = isAboutTemperature(alarm.rule);
  const isHumidity = alarm.rule === 'dry' || alarm.rule === 'wet';
  if (!isTemperature && !isHumidity) return null;
  return words.state.peak(isTemperature ? withTemperature(alarm.peak) : withHumidity(alarm.peak), at(alarm.peakAt));
}

export function AlarmDetails({ alarm, nowMs, zone }: Props) {
  const at = (time: string) => dayAndTime(Date.parse(time), nowMs, zone);
  const peak = peakWords(alarm, at);
  return (
    <p class="details">
      {alarm.probeName !== null && <span>{alarm.probeName}</span>}
      <span>{words.priorities[alarm.priority]}</span>
      <span>{words.state.since(at(alarm.since))}</span>
      {peak !== null && <span>{peak}</span>}
      <span class="taken">{takenWords(alarm, at)}</span>
    </p>
  );
}
