// Alarms of the service itself, in English: what no longer works, what it means for the batches, what to do first.
import type { ServiceRuleId } from '../../alarms/alarm.ts';

const names: Record<ServiceRuleId, string> = {
  'broker-lost': 'Loss of the broker',
  'disk-nearly-full': 'Shortage of disk',
  'clock-jumped': 'Jump of the clock',
  restarted: 'Gap in the watch',
  'delivery-failing': 'Failing delivery',
  'nobody-on-duty': 'Gap in the rota',
  'nobody-reachable': 'Nobody to reach',
};

const advice: Record<ServiceRuleId, string> = {
  'broker-lost': 'Start the broker again. Until then nobody measures: go and look at the tents.',
  'disk-nearly-full':
    'Make room on the disk of the data folder. Nodes keep their readings meanwhile; with room all goes on by itself.',
  'clock-jumped': 'See that the machine gets its time from the network. Times from before may be wrong.',
  restarted: 'Look at the tents named here, and find out why the watch stood still.',
  'delivery-failing':
    'Have this person open Takewell on their phone and send a test; reach them otherwise until it works.',
  'nobody-on-duty': 'Enter somebody into the rota.',
  'nobody-reachable': 'Sign up a phone on the page People, or enter an e-mail address, and send a test.',
};

export const service = {
  names,
  advice,
  forSpan: (span: string) => `for ${span}`,
  forSpanBecause: (span: string, reason: string) => `for ${span}: ${reason}`,
  noReadings: 'No readings come in',
  blind: (places: string) => `Not measured: ${places}`,
  diskFull: 'Readings are not stored',
  diskNearlyFull: (percent: string) => `Disk nearly full: ${percent} free`,
  clockForward: (span: string) => `The clock of the machine was set forward by ${span}`,
  clockBack: (span: string) => `The clock of the machine was set back by ${span}`,
  back: (span: string) => `Back after ${span}`,
  readingsBack: (span: string) => `Readings come in again after ${span}`,
  ofThem: (minutes: number) => `${minutes} of them`,
  above: (limit: string, part: string) => `above ${limit} for ${part}`,
  below: (limit: string, part: string) => `below ${limit} for ${part}`,
  itsLimit: 'its limit',
  was: (chamber: string, what: string) => `${chamber} was ${what}`,
  both: (one: string, other: string) => `${one} and ${other}`,
  unknown: (chamber: string, part: string) => `not known of ${chamber}: ${part}`,
  allWell: 'the tents stayed inside their limits',
  stillInAlarm: (list: string) => `still in alarm: ${list}`,
  notReached: (person: string) => `Alerts do not reach ${person}`,
  somebody: 'somebody',
  nobodyOnDuty: 'Nobody is on duty',
  nobodySoon: (hours: number) => `Nobody will be on duty in ${hours} h`,
  nobodyReached: 'Alerts reach nobody',
  noWayWorks: (span: string) => `no phone and no e-mail works, for ${span}`,
};
