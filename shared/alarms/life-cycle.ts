// The life cycle of one alarm after IEC 62682: which state follows which event. Pure, total, and the only place where a state changes.
import type { AlarmState } from './alarm.ts';

export const lifeCycleEvents = [
  'occur',
  'rise',
  'clear',
  'acknowledge',
  'shelve',
  'unshelve',
  'suppress',
  'unsuppress',
  'take-out-of-service',
  'return-to-service',
  'ask-anew',
] as const;
export type LifeCycleEvent = (typeof lifeCycleEvents)[number];

type Row = Partial<Record<LifeCycleEvent, AlarmState | 'by-condition'>>;

const setAside: Row = { shelve: 'shelved', suppress: 'suppressed', 'take-out-of-service': 'out-of-service' };

// Events that are not in a row change nothing. 'by-condition': unacknowledged while the condition stands, else normal.
const table: Record<AlarmState, Row> = {
  normal: { ...setAside, occur: 'unacknowledged' },
  unacknowledged: { ...setAside, clear: 'returned-unacknowledged', acknowledge: 'acknowledged' },
  // Ours: an acknowledgement does not hold for ever while the condition stands.
  acknowledged: { ...setAside, clear: 'normal', rise: 'unacknowledged', 'ask-anew': 'unacknowledged' },
  'returned-unacknowledged': { ...setAside, occur: 'unacknowledged', acknowledge: 'normal' },
  // Clearing while set aside stays set aside; leaving looks at the condition anew.
  shelved: { unshelve: 'by-condition', 'take-out-of-service': 'out-of-service' },
  suppressed: { unsuppress: 'by-condition', 'take-out-of-service': 'out-of-service' },
  'out-of-service': { 'return-to-service': 'by-condition' },
};

/**
 * The state after an event (IEC 62682 / ISA-18.2 state model). `rise` is a higher severity of a condition that already stands;
 * `condition` tells whether the condition stands after the event. An event without effect returns the state unchanged.
 */
export function nextState(state: AlarmState, event: LifeCycleEvent, condition: boolean): AlarmState {
  const next = table[state][event] ?? state;
  if (next !== 'by-condition') return next;
  return condition ? 'unacknowledged' : 'normal';
}
