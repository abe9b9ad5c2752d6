// Probes, nodes and refused messages. What has been heard and waits to be placed comes first.
import type { ProbeView } from '../../shared/api/probes.ts';
import { calls } from '../calls.ts';
import { chamberNames } from '../chamber-store.ts';
import { words } from '../late-strings.ts';
import { changes } from '../live.ts';
import { LoadState } from '../parts/load-state.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { useLoad } from '../parts/use-load.ts';
import { groupProbes, isWaiting } from '../probe-groups.ts';
import { NodeList } from './node-list.tsx';
import { ProbeItem } from './probe-item.tsx';
import { RefusedList } from './refused-list.tsx';

const { sensors } = words;

interface ListProps {
  readonly probes: readonly ProbeView[];
  readonly onChanged: () => void;
}

function ProbeList({ probes, onChanged }: ListProps) {
  return (
    <ul class="probe-list">
      {probes.map((probe) => (
        <ProbeItem key={probe.id} probe={probe} onChanged={onChanged} />
      ))}
    </ul>
  );
}

function Waiting({ probes, onChanged }: ListProps) {
  return (
    <section aria-labelledby="waiting">
      <h2 id="waiting">{sensors.waiting}</h2>
      {probes.length === 0 && <p class="quiet-line">{sensors.noneWaiting}</p>}
      <ProbeList probes={probes} onChanged={onChanged} />
    </section>
  );
}

function InPlace({ probes, onChanged }: ListProps) {
  const groups = groupProbes(probes, chamberNames.value);
  return (
    <section aria-labelledby="placed">
      <h2 id="placed">{sensors.placed}</h2>
      {groups.length === 0 && <p class="quiet-line">{sensors.nonePlaced}</p>}
      <div class="probe-groups">
        {groups.map((group) => (
          <div key={group.key}>
            <h3>{group.title}</h3>
            <ProbeList probes={group.probes} onChanged={onChanged} />
          </div>
        ))}
      </div>
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
  const probes = useLoad(calls.probes, 'probes', [changes.probes]);
  const nodes = useLoad(calls.nodes, 'nodes', [changes.probes]);
  return (
    <main id="main" class="plain">
      <PageHead title={sensors.title} />
      {probes.data === undefined ? (
        <LoadState {...probes} />
      ) : (
        <>
          <Waiting probes={probes.data.filter(isWaiting)} onChanged={probes.reload} />
          <InPlace probes={probes.data} onChanged={probes.reload} />
        </>
      )}
      <div class="columns">
        <section aria-labelledby="nodes">
          <h2 id="nodes">{sensors.nodes}</h2>
          {nodes.data === undefined ? (
            <LoadState {...nodes} />
          ) : (
            <NodeList nodes={nodes.data} onChanged={nodes.reload} />
          )}
          <HowTo isOpen={probes.data?.length === 0} />
        </section>
        <RefusedList />
      </div>
    </main>
  );
}
