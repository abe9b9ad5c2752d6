// How alerts leave the site, for its manager: mail server, webhooks, siren, heartbeat.
import { calls } from '../calls.ts';
import { LoadState } from '../parts/load-state.tsx';
import { useLoad } from '../parts/use-load.ts';
import { EmailForm } from './email-form.tsx';
import { OutsideForm } from './outside-form.tsx';
import { WebhookList } from './webhook-list.tsx';

export function SiteChannels() {
  const { data, reload, ...state } = useLoad(calls.channels, 'channels');
  if (data === undefined) return <LoadState {...{ data, reload, ...state }} />;
  return (
    <>
      <EmailForm email={data.email} onChanged={reload} />
      <WebhookList webhooks={data.webhooks} onChanged={reload} />
      <OutsideForm channels={data} onChanged={reload} />
    </>
  );
}
