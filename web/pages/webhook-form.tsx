// The webhook: where notices are posted besides phones.
import type { ChannelsView } from '../../shared/api/channels.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { ActButton } from '../parts/act-button.tsx';
import { Field, Tick } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { LoadState } from '../parts/load-state.tsx';
import { useLoad } from '../parts/use-load.ts';
import { words } from '../strings.ts';
import { ChannelTest } from './channel-test.tsx';

const { people: say } = words;

function Fields({ channels, onChanged }: { readonly channels: ChannelsView; readonly onChanged: () => void }) {
  const [webhook, ...others] = channels.webhooks;
  const send = async (fields: FormData) => {
    const secret = textOf(fields, 'secret');
    await calls.saveChannels({
      webhooks: [
        {
          ...(webhook ?? { name: say.webhook }),
          url: textOf(fields, 'url'),
          allowLocal: fields.has('allowLocal'),
          ...(secret === '' ? {} : { secret }),
        },
        ...others,
      ],
    });
    showNote(say.webhookSaved);
    onChanged();
  };
  return (
    <>
      <Form onSend={send} act={say.webhookSave} label={say.webhook}>
        <Field name="url" label={say.webhookUrl} type="url" value={webhook?.url} required autoComplete="off" />
        <Field
          name="secret"
          label={say.webhookSecret}
          hint={say.secretHint}
          type="password"
          autoComplete="new-password"
        />
        <Tick name="allowLocal" label={say.allowLocal} isOn={webhook?.allowLocal ?? false} />
      </Form>
      {webhook !== undefined && (
        <ChannelTest
          test={() => calls.testChannel({ channel: 'webhook', webhookId: webhook.id })}
          label={words.channels.testWebhook}
        />
      )}
      {webhook !== undefined && (
        <ActButton
          kind="quiet"
          work={() => calls.saveChannels({ webhooks: others })}
          done={say.webhookGone}
          onDone={onChanged}
        >
          {say.webhookOff}
        </ActButton>
      )}
    </>
  );
}

export function WebhookForm() {
  const channels = useLoad(calls.channels, 'channels');
  return (
    <section aria-labelledby="webhook">
      <h2 id="webhook">{say.webhook}</h2>
      <p>{say.webhookIntro}</p>
      {channels.data === undefined ? (
        <LoadState {...channels} />
      ) : (
        <Fields key={channels.data.webhooks[0]?.url ?? ''} channels={channels.data} onChanged={channels.reload} />
      )}
    </section>
  );
}
