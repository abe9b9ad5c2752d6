// The statistics of alarms as they are sent to people, with the targets.
import { type AlarmStep, alarmStatistics, alarmTargets, type Stretch } from '../../shared/alarms/alarm-statistics.ts';
import type { AlarmStatisticsView } from '../../shared/api/alarm-statistics.ts';
import { utcText } from '../../shared/units.ts';

export function viewStatistics(steps: readonly AlarmStep[], stretch: Stretch): AlarmStatisticsView {
  const { days, chattering, mostFrequent, ...figures } = alarmStatistics(steps, stretch);
  return {
    from: utcText(stretch.fromMs),
    to: utcText(stretch.toMs),
    ...figures,
    days: [...days],
    chattering: [...chattering],
    mostFrequent: [...mostFrequent],
    targets: alarmTargets,
  };
}
