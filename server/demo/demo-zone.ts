// Where the invented nursery stands today: in a zone where it is about noon, so that the sun can overheat a tent at any hour.
import { createLocalClock } from './local-time.ts';

/** In order of preference, together around the globe. */
const zones = [
  'Europe/Amsterdam',
  'Europe/London',
  'Europe/Athens',
  'America/New_York',
  'America/Chicago',
  'America/Denver',
  'America/Los_Angeles',
  'Asia/Dubai',
  'Asia/Karachi',
  'Asia/Dhaka',
  'Asia/Bangkok',
  'Asia/Singapore',
  'Asia/Tokyo',
  'Australia/Brisbane',
  'Pacific/Auckland',
  'America/Anchorage',
  'Pacific/Honolulu',
  'America/Halifax',
  'America/Sao_Paulo',
  'Atlantic/South_Georgia',
  'Atlantic/Azores',
  'Pacific/Noumea',
] as const;

/** Local hours between which the demo may begin: the sun is high, and batches closed at about three have not changed day. */
const EARLIEST_HOUR = 11;
const LATEST_HOUR = 13.5;

/** The first zone of the list in which it is 11:00–13:30 at `nowMs`. */
export function chooseDemoZone(nowMs: number): string {
  const fits = (zone: string): boolean => {
    const { hour } = createLocalClock(zone)(nowMs);
    return hour >= EARLIEST_HOUR && hour < LATEST_HOUR;
  };
  return zones.find(fits) ?? zones[0];
}
