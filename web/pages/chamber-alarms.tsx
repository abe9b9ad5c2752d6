// The alarms of one chamber besides the one in its head, with all that can be done about them. The one an alert pointed to is brought into view.
import { useEffect, useRef } from 'preact/hooks';
import type { ChamberView } from '../../shared/api/chambers.ts';
import { chamberState } from '../chamber-state.ts';
import { slowNowMs } from '../clock.ts';
import { AlarmItem } from '../parts/alarm-item.tsx';
import { zone } from '../session.ts';
import { words } from '../strings.ts';

interface Props {
  readonly chamber: ChamberView;
  readonly alarmId: string;
}

export function ChamberAlarms({ chamber, alarmId }: Props) {
  const list = useRef<HTMLUListElement>(null);
  useEffect(() => {
    if (alarmId === '') return;
    list.current?.querySelector<HTMLElement>('[data-wanted]')?.scrollIntoView({ block: 'center' });
  }, [alarmId]);
  // The head of the page shows it already.
  const headId = chamberState(chamber, slowNowMs.value, zone.value).alarm?.id;
  const others = chamber.alarms.filter((alarm) => alarm.id !== headId);
  if (others.length === 0) return null;
  return (
    <section aria-labelledby="chamber-alarms">
      <h2 id="chamber-alarms">{words.chamber.alarms}</h2>
      <ul class="alarm-list" ref={list}>
        {others.map((alarm) => (
          <AlarmItem key={alarm.id} alarm={alarm} isWanted={alarm.id === alarmId} />
        ))}
      </ul>
    </section>
  );
}
