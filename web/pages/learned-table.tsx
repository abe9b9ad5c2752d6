// Finished batches: take with its interval beside exposure, each with a box to compare it.
import type { LearnedBatch } from '../../shared/api/learning.ts';
import { words } from '../late-strings.ts';
import { exposureColumns, exposureWords, takeWords } from './learning-words.ts';

interface PickProps {
  readonly id: string;
  readonly code: string;
  readonly picked: readonly string[];
  readonly isFull: boolean;
  readonly onPick: (id: string, isPicked: boolean) => void;
}

export function PickBox({ id, code, picked, isFull, onPick }: PickProps) {
  const isPicked = picked.includes(id);
  return (
    <label class="pick">
      <input
        type="checkbox"
        checked={isPicked}
        disabled={isFull && !isPicked}
        aria-label={words.learning.pickBatch(code)}
        onChange={(event) => onPick(id, event.currentTarget.checked)}
      />
      {code}
    </label>
  );
}

type TableProps = Pick<PickProps, 'picked' | 'isFull' | 'onPick'> & { readonly batches: readonly LearnedBatch[] };

export function LearnedTable({ batches, ...pick }: TableProps) {
  const heads = [words.batches.columns.code, words.learning.take, ...exposureColumns().map(({ label }) => label)];
  return (
    <table class="stacking">
      <caption class="unseen">{words.learning.caption}</caption>
      <thead>
        <tr>
          {heads.map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {batches.map(({ id, code, take, exposures }) => (
          <tr key={id}>
            <th scope="row">
              <PickBox {...{ id, code, ...pick }} />
            </th>
            <td data-name={words.learning.take}>{takeWords(take)}</td>
            {exposureColumns().map(({ name, label }) => (
              <td key={name} data-name={label}>
                {exposureWords(name, exposures[name])}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
