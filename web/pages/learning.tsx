// What batches teach: take beside exposure, what goes with lost take, and batches laid over each other.
import { useEffect, useState } from 'preact/hooks';
import type { BatchView } from '../../shared/api/batches.ts';
import type { LearnedBatch, LearningView } from '../../shared/api/learning.ts';
import { SECOND_MS } from '../../shared/units.ts';
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { changes } from '../live.ts';
import { LoadState } from '../parts/load-state.tsx';
import { useLoad } from '../parts/use-load.ts';
import { OverlayChart } from '../strip/overlay-chart.tsx';
import type { BatchFact } from '../strip/overlay-legend.tsx';
import { LearnedTable, PickBox } from './learned-table.tsx';
import { associationSentences, exposureColumns, exposureWords, takeWords } from './learning-words.ts';

/** As many as the service lays over each other. */
const MOST = 8;
const AGAIN_MS = 2 * SECOND_MS;

function useLearning() {
  const learning = useLoad(calls.learning, 'learning', [changes.batches]);
  const pending = learning.data?.pending ?? 0;
  useEffect(() => {
    if (pending === 0) return;
    const again = setTimeout(learning.reload, AGAIN_MS);
    return () => clearTimeout(again);
  }, [learning.data]);
  return learning;
}

function Found({ associations, batches, pending }: LearningView) {
  if (pending > 0) return <p class="quiet-line">{words.learning.pending(pending)}</p>;
  return (
    <>
      <h3>{words.learning.found}</h3>
      <ul class="plain-list">
        {associationSentences(associations, batches.length).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <p class="details">{words.learning.notCause}</p>
    </>
  );
}

/** Take and exposures of a batch, to stand beside its line; one that is still healing has none yet. */
function factsOf(batches: readonly LearnedBatch[], id: string): readonly BatchFact[] {
  const batch = batches.find((one) => one.id === id);
  const take = batch === undefined ? words.learning.stillHealing : takeWords(batch.take);
  const exposures = exposureColumns().map(({ name, label }) => ({
    label,
    value: batch === undefined ? words.units.none : exposureWords(name, batch.exposures[name]),
  }));
  return [{ label: words.learning.take, value: take }, ...exposures];
}

function Overlay({ ids, batches }: { readonly ids: readonly string[]; readonly batches: readonly LearnedBatch[] }) {
  const overlay = useLoad(() => calls.overlay(ids), ids.join(','));
  return (
    <>
      <h3>{words.learning.overlay}</h3>
      {overlay.data === undefined ? (
        <LoadState {...overlay} />
      ) : (
        <OverlayChart view={overlay.data} factsOf={(id) => factsOf(batches, id)} />
      )}
    </>
  );
}

export function Learning({ open }: { readonly open: readonly BatchView[] }) {
  const learning = useLearning();
  const [picked, setPicked] = useState<readonly string[]>([]);
  const pick = {
    picked,
    isFull: picked.length >= MOST,
    onPick: (id: string, isPicked: boolean) =>
      setPicked((before) => (isPicked ? [...before, id] : before.filter((one) => one !== id))),
  };
  const healing = open.filter(({ closedAt }) => closedAt !== null);
  const view = learning.data;
  return (
    <section aria-labelledby="learning">
      <h2 id="learning">{words.learning.title}</h2>
      {view === undefined ? <LoadState {...learning} /> : <p>{words.learning.intro}</p>}
      {view?.batches.length === 0 && view.pending === 0 && <p class="quiet-line">{words.learning.none}</p>}
      {view !== undefined && view.batches.length > 0 && (
        <>
          <LearnedTable batches={view.batches} {...pick} />
          <p class="details">{words.learning.takeWhy}</p>
          <Found {...view} />
        </>
      )}
      {healing.length > 0 && (
        <fieldset class="picks">
          <legend>{words.learning.pickOpen}</legend>
          {healing.map(({ id, code }) => (
            <PickBox key={id} {...{ id, code, ...pick }} />
          ))}
        </fieldset>
      )}
      {pick.isFull && <p class="quiet-line">{words.learning.most(MOST)}</p>}
      {picked.length > 0 && <Overlay ids={picked} batches={view?.batches ?? []} />}
    </section>
  );
}
