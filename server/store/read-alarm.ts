// Alarms out of their JSON. What is wrong with the service was kept as text until findings were kept as such: old ones say it as it was written.
import type { Alarm } from '../../shared/alarms/alarm.ts';
import type { WatchEntry } from '../../shared/alarms/watch-state.ts';
import { type Finding, finding } from '../../shared/finding.ts';

export function readAlarm(document: string): Alarm {
  return withFinding(JSON.parse(document) as Alarm);
}

export function readWatchEntry(document: string): WatchEntry {
  const entry = JSON.parse(document) as WatchEntry;
  return entry.alarm === null ? entry : { ...entry, alarm: withFinding(entry.alarm) };
}

function withFinding(alarm: Alarm): Alarm {
  const trouble: Finding | string | undefined = alarm.service?.trouble;
  if (typeof trouble !== 'string') return alarm;
  return { ...alarm, service: { ...alarm.service, trouble: finding('asWritten', trouble) } };
}
