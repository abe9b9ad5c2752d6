// The alarms of all chambers: those in force, worst first, and those that are over.
import { useState } from 'preact/hooks';
import type { AlarmView } from '../../shared/api/alarms.ts';
import { alarmRank, isOpen } from '../alarm-order.ts';
import { alarmSentence } from '../alarm-sentence.ts';
import { calls } from '../calls.ts';
import { shapeOfRule } from '../chamber-state.ts';
import { slowNowMs } from '../clock.ts';
import { changes } from '../live.ts';
import { AlarmItem } from '../parts/alarm-item.tsx';
import { LoadState } from '../parts/load-state.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { ShapeMark } from '../parts/shape-mark.tsx';
import { useLoad } from '../parts/use-load.ts';
import { zone } from '../session.ts';
import { words } from '../strings.ts';
import { takenWords } from '../taken-words.ts';
import { dayAndTime } from '../when.ts';
import { AlarmStatistics } from './alarm-statistics.tsx';

/** More at once is a wall of red that nobody reads: the worst stand first. */
const SHOWN_AT_FIRST = 20;

function Active({ alarms, onDone }: { readonly alarms: readonly AlarmView[]; readonly onDone: () => void }) {
  const [isWhole, setWhole] = useState(false);
  if (alarms.length === 0) return <p class="quiet-line">{words.alarms.noneActive}</p>;
  const worstFirst = [...alarms].sort((one, other) => alarmRank(one) - alarmRank(other));
  const open = alarms.filter(isOpen).length;
  const quiet = alarms.filter(({ state }) => state === 'suppressed' || state === 'out-of-service').length;
  return (
    <>
      <p class="summary">{words.alarms.summary(open, alarms.length - open - quiet, quiet)}</p>
      <ul class="alarm-list is-wide">
        {worstFirst.slice(0, isWhole ? undefined : SHOWN_AT_FIRST).map((alarm) => (
          <AlarmItem key={alarm.id} alarm={alarm} withChamber={true} onDone={onDone} />
        ))}
      </ul>
      {!isWhole && alarms.length > SHOWN_AT_FIRST && (
        <button type="button" onClick={() => setWhole(true)}>
          {words.alarms.showAll(alarms.length)}
        </button>
      )}
    </>
  );
}

function Earlier({ alarm }: { readonly alarm: AlarmView }) {
  const nowMs = slowNowMs.value;
  const at = (time: string) => dayAndTime(Date.parse(time), nowMs, zone.value);
  return (
    <li>
      <time dateTime={alarm.occurredAt}>{at(alarm.occurredAt)}</time>
      <span>
        <ShapeMark shape={shapeOfRule(alarm.rule)} /> <b>{alarm.chamberName}</b> {alarmSentence(alarm)}{' '}
        <small>{takenWords(alarm, at)}</small>
      </span>
    </li>
  );
}

/** As many pages as were asked for, from the newest on: asked anew as a whole, since an alarm that ends moves all the others. */
async function pastAlarms(pages: number) {
  const items: AlarmView[] = [];
  let cursor: string | null = '';
  for (let page = 0; page < pages && cursor !== null; page++) {
    const answer: Awaited<ReturnType<typeof calls.pastAlarms>> = await calls.pastAlarms(cursor);
    items.push(...answer.items);
    cursor = answer.nextCursor;
  }
  return { items, hasMore: cursor !== null };
}

function Past() {
  const [pages, setPages] = useState(1);
  const past = useLoad(() => pastAlarms(pages), `past ${pages}`, [changes.alarms]);
  return (
    <section aria-labelledby="recent">
      <h2 id="recent">{words.alarms.recent}</h2>
      {past.data === undefined && <LoadState {...past} />}
      {past.data?.items.length === 0 && <p class="quiet-line">{words.alarms.noneRecent}</p>}
      <ul class="log-list">
        {past.data?.items.map((alarm) => (
          <Earlier key={alarm.id} alarm={alarm} />
        ))}
      </ul>
      {past.data?.hasMore === true && (
        <button type="button" onClick={() => setPages((count) => count + 1)}>
          {words.alarms.before}
        </button>
      )}
    </section>
  );
}

export function AlarmsPage() {
  const active = useLoad(calls.activeAlarms, 'active', [changes.alarms]);
  return (
    <main id="main" class="plain">
      <PageHead title={words.alarms.title} />
      <div class="columns">
        <section aria-labelledby="active">
          <h2 id="active">{words.alarms.active}</h2>
          {active.data === undefined ? (
            <LoadState {...active} />
          ) : (
            <Active alarms={active.data} onDone={active.reload} />
          )}
        </section>
        <Past />
      </div>
      <AlarmStatistics />
    </main>
  );
}
