// Who is told: on duty now, the gaps before they happen, the week, and how an alarm is passed on.
import type { DutyView } from '../../shared/api/duty.ts';
import { calls } from '../calls.ts';
import { nowMs } from '../clock.ts';
import { words } from '../late-strings.ts';
import { LoadState } from '../parts/load-state.tsx';
import { Section } from '../parts/section.tsx';
import { ShapeMark } from '../parts/shape-mark.tsx';
import { useLoad } from '../parts/use-load.ts';
import { maySetUp, session, zone } from '../session.ts';
import { dayAndTime } from '../when.ts';
import { DutyOrder } from './duty-order.tsx';
import { DutyLines, DutyRota } from './duty-rota.tsx';
import { DutyWeek } from './duty-week.tsx';

const { duty: say } = words;
/** More would hide what is below. */
const GAPS_SHOWN = 4;

function sayNow({ spans, people }: DutyView): string {
  if (people.every(({ via }) => via.length === 0)) return say.nobodyAtAll;
  if (spans.length === 0) return say.noRota;
  const onDuty = people.filter((one) => one.isOnDuty);
  if (onDuty.length === 0) return say.nobodyNow;
  const line = say.onDuty(onDuty.map(({ name }) => name).join(', '));
  return onDuty.some(({ via }) => via.length > 0) ? line : `${line}. ${say.nobodyReached}`;
}

function Gaps({ gaps }: Pick<DutyView, 'gaps'>) {
  const at = (time: string) => dayAndTime(Date.parse(time), nowMs.value, zone.value);
  if (gaps.length === 0) return <p class="details">{say.noGaps}</p>;
  return (
    <div class="duty-gaps">
      <h3>
        <ShapeMark shape="overdue" /> {say.gapsTitle}
      </h3>
      <ul class="plain-list">
        {gaps.slice(0, GAPS_SHOWN).map(({ from, to, reason }) => (
          <li key={from}>
            <strong>{say.gap(at(from), at(to))}</strong> {say.gapReasons[reason]}
          </li>
        ))}
        {gaps.length > GAPS_SHOWN && <li>{say.gapsMore(gaps.length - GAPS_SHOWN)}</li>}
      </ul>
    </div>
  );
}

function Plan({ duty, onChanged }: { readonly duty: DutyView; readonly onChanged: () => void }) {
  const mute = duty.people.filter(({ via }) => via.length === 0).map(({ name }) => name);
  const { nextAfterMinutes: next, everyoneAfterMinutes: everyone, sirenAfterMinutes: siren } = duty;
  return (
    <div class="columns is-uneven">
      <div class="duty-sight">
        <p class="duty-now">{sayNow(duty)}</p>
        {duty.spans.length > 0 && <Gaps gaps={duty.gaps} />}
        {mute.length > 0 && (
          <p class="details">{session.value?.demo === true ? words.reach.demo : say.cannotReach(mute.join(', '))}</p>
        )}
        {duty.spans.length > 0 && <DutyWeek duty={duty} />}
        <p class="details">{say.steps({ next, everyone, siren, repeat: duty.repeatMinutes })}</p>
      </div>
      <div class="stack">
        {maySetUp.value ? (
          <>
            <DutyRota {...{ duty, onChanged }} />
            <DutyOrder {...{ duty, onChanged }} />
          </>
        ) : (
          <DutyLines duty={duty} />
        )}
      </div>
    </div>
  );
}

export function DutyPlan() {
  const duty = useLoad(calls.duty, 'duty');
  return (
    <Section id="duty" title={say.title} class="duty">
      {duty.data === undefined ? <LoadState {...duty} /> : <Plan duty={duty.data} onChanged={duty.reload} />}
    </Section>
  );
}
