// The webhooks of the site: each tried, changed or removed on its own, and new ones added.
import type { ChannelsView } from '../../shared/api/channels.ts';
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { ActButton } from '../parts/act-button.tsx';
import { Disclosure, Sure } from '../parts/disclosure.tsx';
import { Section } from '../parts/section.tsx';
import { ChannelTest } from './channel-test.tsx';
import { removeWebhook, type WebhookView } from './save-webhook.ts';
import { WebhookForm } from './webhook-form.tsx';

const { channels: say, people } = words;

const MOST_WEBHOOKS = 10;

interface ItemProps {
  readonly webhook: WebhookView;
  readonly onChanged: () => void;
}

function RemoveWebhook({ webhook, onChanged, close }: ItemProps & { readonly close: () => void }) {
  return (
    <Sure
      question={say.removeSure(webhook.name)}
      yes={
        <>
          <ActButton kind="main" work={() => removeWebhook(webhook.id)} done={people.webhookGone} onDone={onChanged}>
            {people.remove}
          </ActButton>
          <button type="button" class="plain" onClick={close}>
            {words.acts.cancel}
          </button>
        </>
      }
    />
  );
}

function WebhookItem({ webhook, onChanged }: ItemProps) {
  return (
    <li>
      <h3>{webhook.name}</h3>
      <p class="details">
        <span class="webhook-url">{webhook.url}</span>{' '}
        <span>{webhook.audience === 'site' ? say.forSite : say.forEach}</span>
      </p>
      <div class="webhook-acts">
        <ChannelTest
          test={() => calls.testChannel({ channel: 'webhook', webhookId: webhook.id })}
          label={people.test}
          fullLabel={people.testFor(webhook.name)}
        />
        <Disclosure title={say.change} label={say.changeFor(webhook.name)}>
          {(close) => <WebhookForm webhook={webhook} close={close} onChanged={onChanged} />}
        </Disclosure>
        <Disclosure title={people.remove} label={people.removeFor(webhook.name)}>
          {(close) => <RemoveWebhook webhook={webhook} onChanged={onChanged} close={close} />}
        </Disclosure>
      </div>
    </li>
  );
}

interface WebhookListProps {
  readonly webhooks: ChannelsView['webhooks'];
  readonly onChanged: () => void;
}

export function WebhookList({ webhooks, onChanged }: WebhookListProps) {
  return (
    <Section id="webhooks" title={say.webhooks}>
      <p>{say.webhooksIntro}</p>
      {webhooks.length === 0 && <p class="quiet-line">{say.noWebhooks}</p>}
      <ul class="webhook-list">
        {webhooks.map((webhook) => (
          <WebhookItem key={webhook.id} webhook={webhook} onChanged={onChanged} />
        ))}
      </ul>
      {webhooks.length < MOST_WEBHOOKS ? (
        <Disclosure title={say.addWebhook}>{(close) => <WebhookForm close={close} onChanged={onChanged} />}</Disclosure>
      ) : (
        <p class="quiet-line">{say.mostWebhooks}</p>
      )}
    </Section>
  );
}
