// Batches as a table, one line each: what was grafted, where it stands or what came of it, and its record.

import type { BatchView } from '../../shared/api/batches.ts';
import { words } from '../late-strings.ts';
import { RecordLinks } from '../parts/record-links.tsx';
import { planText } from '../plan-text.ts';
import { takePercent } from '../quantities.ts';
import { chamberPath } from '../router.ts';
import { zone } from '../session.ts';
import { shortDate } from '../when.ts';

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

interface TableProps {
  readonly title: string;
  readonly batches: readonly BatchView[];
  readonly isFinished: boolean;
}

interface Column {
  readonly name: string;
  readonly value: (batch: BatchView) => string;
  /** Left out where the screen has no room for it; the chamber's page says it too. */
  readonly isMore?: boolean;
}

const date = (at: string | null) => shortDate(at, zone.value);

const always: readonly Column[] = [
  { name: columns.graft, value: graftOf },
  { name: columns.size, value: (batch) => String(batch.plants) },
  { name: columns.method, value: (batch) => batch.method || words.units.none, isMore: true },
  {
    name: columns.profile,
    value: (batch) => words.batch.facts.version(planText(batch.profileName), batch.profileVersion),
    isMore: true,
  },
  { name: columns.closed, value: (batch) => date(batch.closedAt) },
];
const whileOpen: readonly Column[] = [
  { name: columns.stage, value: stageOf },
  { name: columns.ends, value: (batch) => date(batch.endsAt), isMore: true },
];
const whenFinished: readonly Column[] = [
  { name: columns.finished, value: (batch) => date(batch.finishedAt) },
  { name: columns.take, value: takeOf },
];

function BatchLine({ batch, shown }: { readonly batch: BatchView; readonly shown: readonly Column[] }) {
  return (
    <tr>
      <th scope="row">
        {batch.finishedAt === null ? <a href={chamberPath(batch.chamberId)}>{batch.code}</a> : batch.code}
      </th>
      <td data-name={columns.chamber}>
        <a class="roomy" href={chamberPath(batch.chamberId)}>
          {batch.chamberName}
        </a>
      </td>
      {shown.map(({ name, value, isMore }) => (
        <td key={name} class={isMore ? 'is-more' : ''} data-name={name}>
          {value(batch)}
        </td>
      ))}
      <td data-name={columns.record}>
        <RecordLinks batch={batch} />
      </td>
    </tr>
  );
}

export function BatchTable({ title, batches, isFinished }: TableProps) {
  const shown = [...always, ...(isFinished ? whenFinished : whileOpen)];
  return (
    <table class="stacking">
      <caption class="unseen">{words.batches.caption(title)}</caption>
      <thead>
        <tr>
          <th scope="col">{columns.code}</th>
          <th scope="col">{columns.chamber}</th>
          {shown.map(({ name, isMore }) => (
            <th key={name} scope="col" class={isMore ? 'is-more' : ''}>
              {name}
            </th>
          ))}
          <th scope="col">{columns.record}</th>
        </tr>
      </thead>
      <tbody>
        {batches.map((batch) => (
          <BatchLine key={batch.id} batch={batch} shown={shown} />
        ))}
      </tbody>
    </table>
  );
}
