// What the plants of a batch were exposed to so far, per stage, healing day and in all; asked for when somebody opens it.
import { useState } from 'preact/hooks';
import { calls } from '../calls.ts';
import { LoadState } from '../parts/load-state.tsx';
import { useLoad } from '../parts/use-load.ts';
import { words } from '../strings.ts';
import { cellsOf, namedParts } from './exposure-words.ts';

const { columns } = words.exposure;

function Table({ batchId }: { readonly batchId: string }) {
  const exposure = useLoad(() => calls.exposure(batchId), batchId);
  if (exposure.data === undefined) return <LoadState {...exposure} />;
  return (
    <table class="stacking">
      <caption>{words.exposure.caption}</caption>
      <thead>
        <tr>
          {Object.values(columns).map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {namedParts(exposure.data).map(({ name, part }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            {cellsOf(part).map(([column, text]) => (
              <td key={column} data-name={column}>
                {text}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export function ExposureTable({ batchId }: { readonly batchId: string }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.exposure.title}</summary>
      {isOpen && <Table batchId={batchId} />}
    </details>
  );
}
