// Says on every page when the service itself is in trouble: then what the page shows, or whom it can tell, is not to be relied on. The page of
// alarms says it in its list. New ones are announced with all others (`live.ts`), so this is no live region: its "for 6 min" would be read out each minute.

import { isOpen } from '../alarm-order.ts';
import { alarmAdvice, alarmSentence } from '../alarm-sentence.ts';
import { shapeOfRule } from '../chamber-state.ts';
import { worstServiceAlarm } from '../chamber-store.ts';
import { slowNowMs } from '../clock.ts';
import { route } from '../navigation.ts';
import { zone } from '../session.ts';
import { words } from '../strings.ts';
import { AcknowledgeButton } from './alarm-acts.tsx';
import { AlarmDetails } from './alarm-details.tsx';
import { ShapeMark } from './shape-mark.tsx';

export function ServiceBanner() {
  const worst = worstServiceAlarm.value;
  if (worst === undefined || route.value.page === 'alarms') return null;
  return (
    <section class="service-alarm" aria-label={words.alarms.ofService}>
      <div>
        <p class="sentence" data-urgency={isOpen(worst) ? 'alarm' : 'soon'}>
          <ShapeMark shape={shapeOfRule(worst.rule)} />
          <a href="/alarms">{alarmSentence(worst)}</a>
        </p>
        <AlarmDetails alarm={worst} nowMs={slowNowMs.value} zone={zone.value} />
      </div>
      <div class="do">
        <p class="advice">{alarmAdvice(worst)}</p>
        <AcknowledgeButton alarm={worst} />
      </div>
    </section>
  );
}
