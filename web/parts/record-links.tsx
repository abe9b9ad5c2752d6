// The record of a batch as files.
import { words } from '../strings.ts';

export function RecordLinks({ batch }: { readonly batch: { readonly id: string; readonly code: string } }) {
  const kinds = [
    ['csv', words.batch.csv, words.batch.recordCsv],
    ['json', words.batch.json, words.batch.recordJson],
  ] as const;
  return (
    <span class="record-links">
      {kinds.map(([ending, label, full]) => (
        <a key={ending} class="roomy" href={`/api/v1/batches/${batch.id}/record.${ending}`} download>
          {label}
          <span class="unseen">: {words.batch.recordFor(full, batch.code)}</span>
        </a>
      ))}
    </span>
  );
}
