// All batches: those healing now, and those finished with their take; each with its record.
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { changes } from '../live.ts';
import { LoadState } from '../parts/load-state.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { useLoad } from '../parts/use-load.ts';
import { BatchActs } from './batch-acts.tsx';
import { BatchTable } from './batch-table.tsx';
import { Learning } from './learning.tsx';

export function BatchesPage() {
  const batches = useLoad(calls.batches, 'batches', [changes.batches]);
  const open = batches.data?.filter((batch) => batch.finishedAt === null) ?? [];
  const finished = batches.data?.filter((batch) => batch.finishedAt !== null) ?? [];
  return (
    <main id="main" class="plain">
      <PageHead title={words.batches.title} />
      {batches.data !== undefined && <BatchActs open={open} onChanged={batches.reload} />}
      {batches.data === undefined && <LoadState {...batches} />}
      {batches.data?.length === 0 && <p class="quiet-line">{words.batches.none}</p>}
      {open.length > 0 && (
        <section>
          <h2>{words.batches.open}</h2>
          <BatchTable title={words.batches.open} batches={open} isFinished={false} />
        </section>
      )}
      {batches.data !== undefined && batches.data.length > 0 && (
        <section>
          <h2>{words.batches.finished}</h2>
          {finished.length === 0 && <p class="quiet-line">{words.batches.noFinished}</p>}
          {finished.length > 0 && <BatchTable title={words.batches.finished} batches={finished} isFinished={true} />}
        </section>
      )}
      {batches.data !== undefined && batches.data.length > 0 && <Learning open={open} />}
    </main>
  );
}
