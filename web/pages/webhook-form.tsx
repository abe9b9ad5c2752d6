// One webhook entered or changed: where, for whom, what is sent, and the secrets that go with it.
import { showNote } from '../announce.ts';
import { words } from '../late-strings.ts';
import { Choice, Field, Tick } from '../parts/fields.tsx';
import { Form } from '../parts/form.tsx';
import { saveWebhook, type WebhookView } from './save-webhook.ts';
import { WebhookBody } from './webhook-body.tsx';
import { WebhookHeaders } from './webhook-headers.tsx';

const { channels: say, people } = words;

const audiences = [
  ['site', say.forSite],
  ['each-person', say.forEach],
] as const;

interface WebhookFormProps {
  /** undefined = a new one. */
  readonly webhook?: WebhookView;
  readonly close: () => void;
  readonly onChanged: () => void;
}

function Secret({ isKept }: { readonly isKept: boolean }) {
  return (
    <>
      <Field
        name="secret"
        label={people.webhookSecret}
        hint={isKept ? `${say.secretSigns} ${say.passwordKept}` : say.secretSigns}
        type="password"
        autoComplete="new-password"
      />
      {isKept && <Tick name="dropSecret" label={say.dropSecret} isOn={false} />}
    </>
  );
}

export function WebhookForm({ webhook, close, onChanged }: WebhookFormProps) {
  const send = async (fields: FormData) => {
    await saveWebhook(fields, webhook?.id);
    showNote(people.webhookSaved);
    onChanged();
    close();
  };
  const label = webhook === undefined ? say.addWebhook : say.changeFor(webhook.name);
  return (
    <Form onSend={send} act={say.save} onCancel={close} label={label}>
      <Field name="name" label={people.name} value={webhook?.name} required autoComplete="off" />
      <Field name="url" label={people.webhookUrl} type="url" value={webhook?.url} required autoComplete="off" />
      <Tick name="allowLocal" label={people.allowLocal} isOn={webhook?.allowLocal ?? false} />
      <Choice name="audience" label={say.audience} value={webhook?.audience ?? 'site'} options={audiences} />
      <WebhookBody template={webhook?.template ?? ''} contentType={webhook?.contentType ?? 'json'} />
      <Secret isKept={webhook?.hasSecret ?? false} />
      <WebhookHeaders headers={webhook?.headers ?? []} />
    </Form>
  );
}
