// The body of a webhook as its receiver wants it: how it is sent, the template, what may stand in it, and what a sample alarm would make of it.
import { useState } from 'preact/hooks';
import { type ContentType, fillTemplate, templateFaults, templateFields } from '../../shared/telling/template.ts';
import { words } from '../late-strings.ts';
import { Choice } from '../parts/fields.tsx';
import { LongField } from '../parts/long-field.tsx';

const { channels: say } = words;

const kinds = [
  ['json', say.asJson],
  ['form', say.asForm],
] as const;

/** The kind that a choice stands for. */
export function asContentType(text: string): ContentType {
  return text === 'form' ? 'form' : 'json';
}

function Preview({ template, kind }: { readonly template: string; readonly kind: ContentType }) {
  return (
    <figure class="body-preview">
      <figcaption>{say.preview}</figcaption>
      {template.trim() === '' ? <p>{say.wholeNotice}</p> : <pre>{fillTemplate(template, templateFields, kind)}</pre>}
    </figure>
  );
}

function FieldList() {
  return (
    <details>
      <summary>{say.fieldList}</summary>
      <dl class="body-fields">
        {Object.entries(templateFields).map(([name, example]) => (
          <div key={name}>
            <dt>
              <code>{`{{${name}}}`}</code>
            </dt>
            <dd>{example}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}

interface WebhookBodyProps {
  readonly template: string;
  readonly contentType: ContentType;
}

export function WebhookBody({ template, contentType }: WebhookBodyProps) {
  const [text, setText] = useState(template);
  const [kind, setKind] = useState(contentType);
  // A form without a body is told by the service: it is no fault of what has been typed so far.
  const [fault] = text.trim() === '' ? [] : templateFaults(text, kind);
  return (
    <>
      <Choice
        name="contentType"
        label={say.contentType}
        value={contentType}
        options={kinds}
        onChoose={(chosen) => setKind(asContentType(chosen))}
      />
      <LongField
        name="template"
        label={say.template}
        hint={say.templateHint}
        value={template}
        fault={fault?.reason(words)}
        onText={setText}
      />
      <FieldList />
      <Preview template={text} kind={kind} />
    </>
  );
}
