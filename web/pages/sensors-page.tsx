// Probes, nodes and refused messages. What has been heard and waits to be placed comes first.
import type { ProbeView } from '../../shared/api/probes.ts';
import { calls } from '../calls.ts';
import { probes } from '../chamber-store.ts';
import { changes } from '../live.ts';
import { LoadState } from '../parts/load-state.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { useLoad } from '../parts/use-load.ts';
import { words } from '../strings.ts';
import { NodeList } from './node-list.tsx';
import { ProbeItem } from './probe-item.tsx';
import { RefusedList } from './refused-list.tsx';

const { sensors } = words;

function isWaiting(probe: ProbeView): boolean {
  return probe.chamberId === null && probe.place === null && !probe.outOfService;
}

function ProbeList({
  title,
  list,
  none,
}: {
  readonly title: string;
  readonly list: readonly ProbeView[];
  readonly none: string;
}) {
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      {list.length === 0 && <p class="quiet-line">{none}</p>}
      <ul class="probe-list">
        {list.map((probe) => (
          <ProbeItem key={probe.id} probe={probe} />
        ))}
      </ul>
    </section>
  );
}

function HowTo({ isOpen }: { readonly isOpen: boolean }) {
  return (
    <details open={isOpen}>
      <summary>{sensors.howTo}</summary>
      <p>{sensors.howToText}</p>
      <p class="code-line">
        <code>{sensors.topic}</code>
      </p>
      <p class="code-line">
        <code>{sensors.payload}</code>
      </p>
    </details>
  );
}

export function SensorsPage() {
  const loaded = useLoad(async () => {
    probes.value = await calls.probes();
    return true;
  }, 'probes');
  const nodes = useLoad(calls.nodes, 'nodes', [changes.probes]);
  const list = probes.value;
  return (
    <main id="main" class="plain">
      <PageHead title={sensors.title} />
      {loaded.data === undefined && list.length === 0 ? (
        <LoadState {...loaded} />
      ) : (
        <>
          <ProbeList title={sensors.waiting} list={list.filter(isWaiting)} none={sensors.noneWaiting} />
          <ProbeList
            title={sensors.placed}
            list={list.filter((probe) => !isWaiting(probe))}
            none={sensors.nonePlaced}
          />
        </>
      )}
      <HowTo isOpen={loaded.data !== undefined && list.length === 0} />
      <section aria-labelledby="nodes">
        <h2 id="nodes">{sensors.nodes}</h2>
        {nodes.data === undefined ? <LoadState {...nodes} /> : <NodeList nodes={nodes.data} onChanged={nodes.reload} />}
      </section>
      <RefusedList />
    </main>
  );
}
