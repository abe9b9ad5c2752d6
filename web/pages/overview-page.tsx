// The overview: every chamber, worst first. It must answer from three metres which chamber needs someone, why and since when.
import { useComputed } from '@preact/signals';
import { useState } from 'preact/hooks';
import { allChambers, chamberIds, hasBatch } from '../chamber-store.ts';
import { slowNowMs } from '../clock.ts';
import { loadEverything, loadProblem } from '../live.ts';
import { LoadState } from '../parts/load-state.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { maySetUp, zone } from '../session.ts';
import { words } from '../strings.ts';
import { StripLegend } from '../strip/strip-legend.tsx';
import { AddChamber } from './add-chamber.tsx';
import { ChamberRow } from './chamber-row.tsx';
import { FirstSteps } from './first-steps.tsx';
import { Headline } from './headline.tsx';
import { type Groups, groupChambers, matchesText } from './overview-order.ts';
import { useSteady } from './use-steady.ts';

/** From this many chambers on, those without an alarm are shown in short rows, in groups, and can be searched. */
const manyFrom = 9;

function Rows({ ids, isShort }: { readonly ids: readonly string[]; readonly isShort: boolean }) {
  return (
    <>
      {ids.map((id) => (
        <ChamberRow key={id} id={id} isShort={isShort} />
      ))}
    </>
  );
}

function Group({
  title,
  ids,
  isShort,
  isFine = false,
}: {
  readonly title: string;
  readonly ids: readonly string[];
  readonly isShort: boolean;
  /** Nothing in it needs anybody. */
  readonly isFine?: boolean;
}) {
  if (ids.length === 0) return null;
  return (
    <section class={isFine ? 'group is-fine' : 'group'} aria-label={title}>
      <h2 class="group-title">
        {title} <span>{ids.length}</span>
      </h2>
      <Rows ids={ids} isShort={isShort} />
    </section>
  );
}

function useOrder(find: string) {
  // As text, so that a new value that changes no order redraws no list.
  const key = useComputed(() => {
    const shown = allChambers.value.filter((chamber) => matchesText(chamber, find));
    return JSON.stringify(groupChambers(shown, slowNowMs.value, zone.value));
  });
  return JSON.parse(useSteady(key.value)) as Groups;
}

function Chambers({ count }: { readonly count: number }) {
  const [find, setFind] = useState('');
  const order = useOrder(find);
  const isMany = count >= manyFrom;
  const shown = order.alarm.length + order.soon.length + order.fine.length;
  return (
    <>
      <div class="overview-head">
        <Headline />
        {isMany && (
          <input
            type="search"
            aria-label={words.overview.find}
            placeholder={words.overview.find}
            value={find}
            onInput={(event) => setFind(event.currentTarget.value)}
          />
        )}
      </div>
      <div class={isMany ? 'ledger is-many' : 'ledger'}>
        {isMany ? (
          <>
            <Group title={words.overview.groupAlarm} ids={order.alarm} isShort={false} />
            <Group title={words.overview.groupSoon} ids={order.soon} isShort={true} />
            <Group title={words.overview.groupFine} ids={order.fine} isShort={true} isFine={true} />
          </>
        ) : (
          <Rows ids={[...order.alarm, ...order.soon, ...order.fine]} isShort={false} />
        )}
        {shown === 0 && <p class="quiet-line">{words.overview.nothingFound(find)}</p>}
      </div>
    </>
  );
}

export function OverviewPage() {
  const ids = chamberIds.value;
  const isEmpty = ids !== undefined && ids.length === 0;
  return (
    <main id="main" class="overview">
      <PageHead title={words.overview.title} isHidden={true} />
      {ids === undefined && <LoadState problem={loadProblem.value} reload={() => void loadEverything()} />}
      {ids !== undefined && !isEmpty && <Chambers count={ids.length} />}
      {ids !== undefined && !hasBatch.value && <FirstSteps />}
      {ids !== undefined && !isEmpty && (
        <div class="below">
          <StripLegend />
          {maySetUp.value && <AddChamber />}
        </div>
      )}
    </main>
  );
}
