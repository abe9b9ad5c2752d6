// Says on the wall that the service itself is in trouble: what hangs there may then not be relied on. It leads nowhere: the wall has no hands.
import { isOpen } from '../alarm-order.ts';
import { alarmAdvice, alarmSentence } from '../alarm-sentence.ts';
import { shapeOfRule } from '../chamber-state.ts';
import { worstServiceAlarm } from '../chamber-store.ts';
import { words } from '../late-strings.ts';
import { ShapeMark } from '../parts/shape-mark.tsx';

export function WallService() {
  const worst = worstServiceAlarm.value;
  if (worst === undefined) return null;
  return (
    <section class="wall-service" aria-label={words.alarms.ofService}>
      <p class="sentence" data-urgency={isOpen(worst) ? 'alarm' : 'soon'}>
        <ShapeMark shape={shapeOfRule(worst.rule)} />
        <span>{alarmSentence(worst)}</span>
      </p>
      <p class="advice">{alarmAdvice(worst)}</p>
    </section>
  );
}
