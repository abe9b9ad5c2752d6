// What a batch is, as fields: what was grafted on what, how, and how many. For opening one and for correcting it.

import type { BatchView } from '../../shared/api/batches.ts';
import { Field } from '../parts/fields.tsx';
import { numberOf, textOf } from '../parts/form.tsx';
import { words } from '../strings.ts';

type Facts = Pick<BatchView, 'code' | 'scion' | 'rootstock' | 'method' | 'trays' | 'plants'>;

/** What stands in the fields. */
export function batchFactsOf(fields: FormData): Facts {
  const text = (name: string) => textOf(fields, name);
  return {
    ...{ code: text('code'), scion: text('scion'), rootstock: text('rootstock'), method: text('method') },
    ...{ trays: numberOf(fields, 'trays'), plants: numberOf(fields, 'plants') },
  };
}

/** A number that was never entered is stored as 0, and an empty field says so better. */
const entered = (count: number | undefined) => (count === undefined || count === 0 ? '' : count);

/** The fields, with what is known of `batch` in them. */
export function BatchFields({ batch }: { readonly batch?: Facts }) {
  return (
    <>
      <Field name="code" label={words.batch.code} value={batch?.code} required autoComplete="off" />
      <div class="field-pair">
        <Field name="scion" label={words.batch.scion} value={batch?.scion} autoComplete="off" />
        <Field name="rootstock" label={words.batch.rootstock} value={batch?.rootstock} autoComplete="off" />
      </div>
      <Field
        name="method"
        label={words.batch.method}
        hint={words.batch.methodHint}
        value={batch?.method}
        autoComplete="off"
      />
      <div class="field-pair">
        <Field name="trays" label={words.batch.trays} type="number" value={entered(batch?.trays)} min={0} />
        <Field
          name="plants"
          label={words.batch.plants}
          hint={words.batch.plantsHint}
          type="number"
          value={entered(batch?.plants)}
          min={0}
        />
      </div>
    </>
  );
}
