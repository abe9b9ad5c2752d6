// Whether alerts can reach the one who is signed in, now: one sentence with what to do, each way with its last result, duty and quiet hours.
import type { ReachView } from '../../shared/api/reach.ts';
import type { Person } from '../../shared/api/session.ts';
import { calls } from '../calls.ts';
import type { Shape } from '../chamber-state.ts';
import { slowNowMs } from '../clock.ts';
import { words } from '../late-strings.ts';
import { changes } from '../live.ts';
import { LoadState } from '../parts/load-state.tsx';
import { ShapeMark } from '../parts/shape-mark.tsx';
import { useLoad } from '../parts/use-load.ts';
import { session, zone } from '../session.ts';
import { dayAndTime } from '../when.ts';

const { reach: say } = words;

const shapes: Record<ReachView['verdict'], Shape> = {
  reached: 'order',
  untried: 'old',
  partly: 'watch',
  failing: 'silent',
  'no-way': 'silent',
};

type Way = ReachView['ways'][number];

function sayTime(at: string): string {
  return dayAndTime(Date.parse(at), slowNowMs.value, zone.value);
}

function sayWay({ channel, name, works, lastResult, lastResultAt, confirmedAt }: Way): string {
  const way = channel === 'email' ? say.email : name;
  if (lastResultAt === null) return say.notTried(way);
  if (!works) return say.fails(way, sayTime(lastResultAt), lastResult ?? '');
  return confirmedAt === null ? say.works(way, sayTime(lastResultAt)) : say.shown(way, sayTime(confirmedAt));
}

function sayDuty({ isOnDuty, dutyUntil, nextDutyAt }: ReachView): string {
  if (isOnDuty) return dutyUntil === null ? say.onDuty : say.onDutyUntil(sayTime(dutyUntil));
  return nextDutyAt === null ? say.offDuty : say.nextDuty(sayTime(nextDutyAt));
}

/** Asked anew when how they are told changes, after tests, and when something was or may have been told. */
export function MyReach({ me }: { readonly me: Person }) {
  const reach = useLoad(calls.reach, JSON.stringify(me), [changes.reach, changes.alarms]);
  const { data } = reach;
  if (data === undefined) return <LoadState {...reach} />;
  return (
    <section aria-label={say.title}>
      <p class="sentence" role="status">
        <ShapeMark shape={shapes[data.verdict]} />
        <span>{say.verdicts[data.verdict]}</span>
      </p>
      {data.verdict !== 'reached' && <p>{say.advice[data.verdict]}</p>}
      {data.verdict === 'no-way' && session.value?.demo === true && <p class="details">{say.demo}</p>}
      <p class="details">
        {sayDuty(data)} {data.quietUntil !== null && say.quiet(data.quietUntil)}
      </p>
      {data.ways.map((way, index) => (
        <p class="details" key={index}>
          {sayWay(way)}
        </p>
      ))}
    </section>
  );
}
