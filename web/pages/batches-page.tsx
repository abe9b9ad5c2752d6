// All batches: those healing now, and those finished with their take; each with its record.
import type { BatchView } from '../../shared/api/batches.ts';
import { calls } from '../calls.ts';
import { changes } from '../live.ts';
import { LoadState } from '../parts/load-state.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { RecordLinks } from '../parts/record-links.tsx';
import { useLoad } from '../parts/use-load.ts';
import { takePercent } from '../quantities.ts';
import { chamberPath } from '../router.ts';
import { zone } from '../session.ts';
import { words } from '../strings.ts';
import { shortDate } from '../when.ts';
import { Learning } from './learning.tsx';

const { columns } = words.batches;

function graftOf(batch: BatchView): string {
  return batch.scion === '' && batch.rootstock === ''
    ? words.units.none
    : words.overview.graft(batch.scion, batch.rootstock);
}

function takeOf(batch: BatchView): string {
  const percent = takePercent(batch.takenPlants, batch.plants);
  if (batch.takenPlants === null) return words.units.none;
  return percent === null ? String(batch.takenPlants) : words.batches.take(percent, batch.takenPlants, batch.plants);
}

function stageOf(batch: BatchView): string {
  if (batch.closedAt === null) return words.stages.loading;
  return batch.stage === null ? words.units.none : words.batches.dayStage(batch.healingDay, words.stages[batch.stage]);
}

function BatchTable({
  title,
  batches,
  isFinished,
}: {
  title: string;
  batches: readonly BatchView[];
  isFinished: boolean;
}) {
  const names = [
    ...[columns.code, columns.chamber, columns.graft, columns.size, columns.closed],
    ...(isFinished ? [columns.finished, columns.take] : [columns.stage]),
    columns.record,
  ];
  const cells = (batch: BatchView) => [
    [columns.graft, graftOf(batch)],
    [columns.size, String(batch.plants)],
    [columns.closed, shortDate(batch.closedAt, zone.value)],
    ...(isFinished
      ? [
          [columns.finished, shortDate(batch.finishedAt, zone.value)],
          [columns.take, takeOf(batch)],
        ]
      : [[columns.stage, stageOf(batch)]]),
  ];
  return (
    <table class="stacking">
      <caption class="unseen">{words.batches.caption(title)}</caption>
      <thead>
        <tr>
          {names.map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {batches.map((batch) => (
          <tr key={batch.id}>
            <th scope="row">{batch.code}</th>
            <td data-name={columns.chamber}>
              <a href={chamberPath(batch.chamberId)}>{batch.chamberName}</a>
            </td>
            {cells(batch).map(([name, value]) => (
              <td key={name} data-name={name}>
                {value}
              </td>
            ))}
            <td data-name={columns.record}>
              <RecordLinks batch={batch} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export function BatchesPage() {
  const batches = useLoad(calls.batches, 'batches', [changes.batches]);
  const open = batches.data?.filter((batch) => batch.finishedAt === null) ?? [];
  const finished = batches.data?.filter((batch) => batch.finishedAt !== null) ?? [];
  return (
    <main id="main" class="plain">
      <PageHead title={words.batches.title} />
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
