// Puts right what was entered of a batch: its facts, and when its chamber was closed. What stood before is kept in the log.

import type { BatchView } from '../../shared/api/batches.ts';
import { showNote } from '../announce.ts';
import { ApiProblem } from '../api.ts';
import { calls } from '../calls.ts';
import { Disclosure } from '../parts/disclosure.tsx';
import { Field } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { zone } from '../session.ts';
import { words } from '../strings.ts';
import { instantOfWallTime, wallTime } from '../when.ts';
import { BatchFields, batchFactsOf } from './batch-fields.tsx';

/** The time of closing as a field shows it: to the minute, at the site. */
function closedText({ closedAt }: BatchView): string {
  return closedAt === null ? '' : wallTime(Date.parse(closedAt), zone.peek());
}

/** The corrected closing; nothing while the field says what it said, since the batch knows its seconds. */
function closingOf(fields: FormData, batch: BatchView): { closedAt?: string } {
  const text = textOf(fields, 'closedAt');
  if (batch.closedAt === null || text === closedText(batch)) return {};
  const atMs = instantOfWallTime(text, zone.peek());
  if (atMs === null)
    throw new ApiProblem(words.batch.closedAtBad, 400, [{ where: 'closedAt', reason: words.batch.closedAtBad }]);
  return { closedAt: new Date(atMs).toISOString() };
}

interface Props {
  readonly batch: BatchView;
  readonly onChanged: () => void;
}

export function CorrectBatch({ batch, onChanged }: Props) {
  const send = (close: () => void) => async (fields: FormData) => {
    await calls.changeBatch(batch.id, { ...batchFactsOf(fields), ...closingOf(fields, batch) });
    showNote(words.batch.corrected);
    close();
    onChanged();
  };
  return (
    <Disclosure title={words.batch.correct}>
      {(close) => (
        <Form onSend={send(close)} act={words.batch.correctSave} onCancel={close} label={words.batch.correct}>
          <BatchFields batch={batch} />
          {batch.closedAt !== null && (
            <Field
              name="closedAt"
              label={words.batch.closedAt}
              type="datetime-local"
              value={closedText(batch)}
              required
            />
          )}
        </Form>
      )}
    </Disclosure>
  );
}
