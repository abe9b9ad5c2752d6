// The week as seven rows of a ledger: who is on duty at which hour, with what nobody covers left hatched.
import type { DutyView } from '../../shared/api/duty.ts';
import { weekBars } from '../duty-words.ts';
import { words } from '../late-strings.ts';

const { duty: say } = words;
/** Height of one lane. */
const LANE_REM = 2;
const percent = (share: number) => `${(share * 100).toFixed(3)}%`;

/** It repeats the lines of the rota for the eye; a screen reader reads those. */
export function DutyWeek({ duty }: { readonly duty: DutyView }) {
  const nameOf = (id: string) => duty.people.find((one) => one.id === id)?.name ?? '';
  return (
    <div class="duty-week" aria-hidden="true">
      {weekBars(duty.spans).map((bars, day) => (
        <div class="duty-day" key={say.daysShort[day]}>
          <span class="duty-name">{say.daysShort[day]}</span>
          <div
            class="duty-track"
            style={{ height: `${(1 + Math.max(0, ...bars.map(({ lane }) => lane))) * LANE_REM}rem` }}
          >
            {bars.map(({ personId, from, to, lane }) => (
              <span
                key={`${personId} ${from}`}
                class="duty-bar"
                style={{ left: percent(from), width: percent(to - from), top: `${lane * LANE_REM}rem` }}
              >
                {nameOf(personId)}
              </span>
            ))}
          </div>
        </div>
      ))}
      <div class="duty-day duty-hours">
        <span />
        <div>
          {['00', '06', '12', '18', '24'].map((hour) => (
            <span key={hour}>{hour}</span>
          ))}
        </div>
      </div>
    </div>
  );
}
