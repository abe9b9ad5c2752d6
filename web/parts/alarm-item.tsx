// One alarm in a list: shape and sentence, how long, who has it, what to do first, and the acts.
import type { AlarmView } from '../../shared/api/alarms.ts';
import { isOpen } from '../alarm-order.ts';
import { alarmAdvice, alarmSentence } from '../alarm-sentence.ts';
import { shapeOfRule } from '../chamber-state.ts';
import { slowNowMs } from '../clock.ts';
import { chamberPath } from '../router.ts';
import { zone } from '../session.ts';
import { words } from '../strings.ts';
import { AlarmActs } from './alarm-acts.tsx';
import { AlarmDetails } from './alarm-details.tsx';
import { ShapeMark } from './shape-mark.tsx';

interface Props {
  readonly alarm: AlarmView;
  readonly isWanted?: boolean;
  /** Names the chamber, for lists of more than one. */
  readonly withChamber?: boolean;
  readonly onDone?: () => void;
}

/** Where the alarm is to be seen; one of the service itself stands on the page of alarms only. */
function placePath({ chamberId, id }: AlarmView): string {
  return chamberId === null ? '/alarms' : `${chamberPath(chamberId)}?alarm=${id}`;
}

export function AlarmItem({ alarm, isWanted = false, withChamber = false, onDone }: Props) {
  const advice = alarmAdvice(alarm);
  return (
    <li
      class="alarm"
      data-urgency={isOpen(alarm) ? 'alarm' : 'soon'}
      data-priority={alarm.priority}
      data-wanted={isWanted ? '' : undefined}
    >
      {withChamber && (
        <p class="alarm-where">
          <a href={placePath(alarm)}>
            {alarm.batchCode === null
              ? alarm.chamberName
              : words.alarms.chamberBatch(alarm.chamberName, alarm.batchCode)}
          </a>
        </p>
      )}
      <p class="sentence" data-urgency={isOpen(alarm) ? 'alarm' : 'soon'}>
        <ShapeMark shape={shapeOfRule(alarm.rule)} />
        <span>{alarmSentence(alarm)}</span>
      </p>
      <AlarmDetails alarm={alarm} nowMs={slowNowMs.value} zone={zone.value} />
      {advice !== '' && <p class="advice">{advice}</p>}
      <AlarmActs alarm={alarm} {...(onDone === undefined ? {} : { onDone })} />
    </li>
  );
}
