// What leaves the site besides mails and webhooks: the siren, the heartbeat for an outside watcher, and whom push services may write to.
import type { ChannelsView } from '../../shared/api/channels.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { Field, Tick } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { Section } from '../parts/section.tsx';
import { ChannelTest } from './channel-test.tsx';

const { channels: say, people } = words;

function changeOf(fields: FormData) {
  const [url, contact] = [textOf(fields, 'url'), textOf(fields, 'contact')];
  return {
    siren: { enabled: fields.has('siren') },
    heartbeat: url === '' ? null : { url, allowLocal: fields.has('allowLocal') },
    contact: contact === '' ? null : contact,
  };
}

interface OutsideFormProps {
  readonly channels: ChannelsView;
  readonly onChanged: () => void;
}

export function OutsideForm({ channels: { siren, heartbeat, contact }, onChanged }: OutsideFormProps) {
  const send = async (fields: FormData) => {
    await calls.saveChannels(changeOf(fields));
    showNote(say.outsideSaved);
    onChanged();
  };
  return (
    <Section id="outside" title={say.outside}>
      <Form onSend={send} act={say.save} label={say.outside}>
        <Tick name="siren" label={say.siren} hint={say.sirenHint} isOn={siren.enabled} />
        <Field name="url" label={say.heartbeat} hint={say.heartbeatHint} type="url" value={heartbeat?.url} />
        <Tick name="allowLocal" label={people.allowLocal} isOn={heartbeat?.allowLocal ?? false} />
        <Field name="contact" label={say.contact} hint={say.contactHint} value={contact ?? ''} autoComplete="off" />
      </Form>
      <div class="trials">
        {siren.enabled && (
          <ChannelTest test={() => calls.testChannel({ channel: 'siren' })} label={say.trySiren} saysAll />
        )}
        {heartbeat !== null && (
          <ChannelTest test={() => calls.testChannel({ channel: 'heartbeat' })} label={say.tryHeartbeat} saysAll />
        )}
      </div>
    </Section>
  );
}
