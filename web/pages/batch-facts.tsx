// What a batch is, as a list of facts, with its record to take away.

import type { BatchView } from '../../shared/api/batches.ts';
import { slowNowMs } from '../clock.ts';
import { RecordLinks } from '../parts/record-links.tsx';
import { planText } from '../plan-text.ts';
import { zone } from '../session.ts';
import { words } from '../strings.ts';
import { dayAndTime } from '../when.ts';

const { facts } = words.batch;

function factsOf(
  batch: BatchView,
  time: (at: string | null) => string,
): readonly (readonly [name: string, ...lines: string[]])[] {
  const graft = batch.scion === '' && batch.rootstock === '' ? '' : words.overview.graft(batch.scion, batch.rootstock);
  const stages = batch.stages.map(({ stage, startsAt }) => facts.stageSpan(words.stages[stage], time(startsAt)));
  const all: readonly (readonly [name: string, ...lines: string[]])[] = [
    [facts.batch, batch.code],
    [facts.graft, graft],
    [facts.method, batch.method],
    [facts.size, facts.size2(batch.trays, batch.plants)],
    [facts.profile, facts.version(planText(batch.profileName), batch.profileVersion)],
    [facts.closed, time(batch.closedAt)],
    [facts.stages, ...stages],
    [facts.ends, time(batch.endsAt)],
    [facts.gap, batch.gapPercent === null ? '' : words.log.gapWords(batch.gapPercent)],
  ];
  return all.filter(([, value = '']) => value !== '' && value !== words.units.none);
}

export function BatchFacts({ batch }: { readonly batch: BatchView }) {
  const nowMs = slowNowMs.value;
  const time = (at: string | null) => (at === null ? words.units.none : dayAndTime(Date.parse(at), nowMs, zone.value));
  return (
    <section aria-labelledby="batch-facts">
      <h2 id="batch-facts">{words.batch.title}</h2>
      <dl class="facts">
        {factsOf(batch, time).map(([name, ...lines]) => (
          <div key={name}>
            <dt>{name}</dt>
            {lines.map((line) => (
              <dd key={line}>{line}</dd>
            ))}
          </div>
        ))}
        <div>
          <dt>{words.batch.record}</dt>
          <dd>
            <RecordLinks batch={batch} />
          </dd>
        </div>
      </dl>
    </section>
  );
}
