// Says on every page when the service itself is in trouble: then what the page shows, or whom it can tell, is not to be relied on.

import { isOpen } from '../alarm-order.ts';
import { alarmAdvice, alarmSentence } from '../alarm-sentence.ts';
import { shapeOfRule } from '../chamber-state.ts';
import { serviceAlarms } from '../chamber-store.ts';
import { ShapeMark } from './shape-mark.tsx';

export function ServiceBanner() {
  const told = serviceAlarms.value
    .filter((alarm) => alarm.level > 0 || isOpen(alarm))
    .filter(({ priority }) => priority !== 'low');
  const [worst] = told;
  if (worst === undefined) return null;
  return (
    <p class="service-alarm" role="status" data-urgency={isOpen(worst) ? 'alarm' : 'soon'}>
      <ShapeMark shape={shapeOfRule(worst.rule)} />
      <a href="/alarms">{alarmSentence(worst)}</a> <span>{alarmAdvice(worst)}</span>
    </p>
  );
}
