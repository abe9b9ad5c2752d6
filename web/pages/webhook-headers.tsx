// The headers that are sent along with a webhook. Their values are secrets: one that is kept is never shown, and stays when nothing is typed.
import { useState } from 'preact/hooks';
import { words } from '../late-strings.ts';
import { Field } from '../parts/fields.tsx';

const { channels: say, people } = words;

const MOST_HEADERS = 10;

interface Row {
  readonly key: number;
  /** '' = new. */
  readonly kept: string;
}

export function WebhookHeaders({ headers }: { readonly headers: readonly { readonly name: string }[] }) {
  const [rows, setRows] = useState<readonly Row[]>(() => headers.map(({ name }, key) => ({ key, kept: name })));
  const add = () => setRows([...rows, { key: Math.max(-1, ...rows.map(({ key }) => key)) + 1, kept: '' }]);
  return (
    <fieldset class="webhook-headers">
      <legend>{say.headers}</legend>
      <p>{say.headersHint}</p>
      {rows.map(({ key, kept }, index) => (
        <div class="webhook-header" key={key}>
          <Field name={`header-${index}-name`} label={say.headerName(index + 1)} value={kept} autoComplete="off" />
          <Field
            name={`header-${index}-value`}
            label={say.headerValue(index + 1)}
            hint={kept === '' ? undefined : say.passwordKept}
            type="password"
            autoComplete="new-password"
          />
          <button
            type="button"
            class="quiet"
            aria-label={people.removeFor(say.headerName(index + 1))}
            onClick={() => setRows(rows.filter((row) => row.key !== key))}
          >
            {people.remove}
          </button>
        </div>
      ))}
      {rows.length < MOST_HEADERS && (
        <button type="button" class="plain" onClick={add}>
          {say.addHeader}
        </button>
      )}
    </fieldset>
  );
}
