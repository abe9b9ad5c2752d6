// The mail server that carries notices to people's e-mail, and a test to one's own.
import type { ChannelsView } from '../../shared/api/channels.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { ActButton } from '../parts/act-button.tsx';
import { Choice, Field } from '../parts/fields.tsx';
import { Form, numberOf, textOf } from '../parts/form.tsx';
import { Section } from '../parts/section.tsx';
import { ChannelTest } from './channel-test.tsx';

const { channels: say } = words;

const securities = [
  ['starttls', say.starttls],
  ['tls', say.tls],
  ['none', say.noSecurity],
] as const;

/** A password that is not typed stays as it is. */
function changeOf(fields: FormData) {
  const [user, password] = [textOf(fields, 'user'), textOf(fields, 'password')];
  return {
    host: textOf(fields, 'host'),
    port: numberOf(fields, 'port'),
    security: textOf(fields, 'security'),
    from: textOf(fields, 'from'),
    ...(user !== '' && { user }),
    ...(password !== '' && { password }),
  };
}

interface FieldsProps {
  readonly email: ChannelsView['email'];
  readonly onChanged: () => void;
}

function EmailFields({ email, onChanged }: FieldsProps) {
  const send = async (fields: FormData) => {
    await calls.saveChannels({ email: changeOf(fields) });
    showNote(say.emailSaved);
    onChanged();
  };
  return (
    <>
      <Form onSend={send} act={say.emailSave} label={say.email}>
        <Field name="host" label={say.host} value={email?.host} required autoComplete="off" />
        <Field name="port" label={say.port} type="number" value={email?.port ?? 587} required min={1} max={65_535} />
        <Choice name="security" label={say.security} value={email?.security ?? 'starttls'} options={securities} />
        <Field name="user" label={say.user} value={email?.user} autoComplete="off" />
        <Field
          name="password"
          label={say.password}
          hint={email?.hasPassword === true ? say.passwordKept : undefined}
          type="password"
          autoComplete="new-password"
        />
        <Field name="from" label={say.from} hint={say.fromHint} value={email?.from} required autoComplete="off" />
      </Form>
      {email !== null && (
        <>
          <ChannelTest test={() => calls.testChannel({ channel: 'email' })} label={say.testEmail} />
          <ActButton
            kind="quiet"
            work={() => calls.saveChannels({ email: null })}
            done={say.emailGone}
            onDone={onChanged}
          >
            {say.emailOff}
          </ActButton>
        </>
      )}
    </>
  );
}

export function EmailForm({ email, onChanged }: FieldsProps) {
  return (
    <Section id="email" title={say.email}>
      <p>{say.emailIntro}</p>
      <EmailFields key={email?.host ?? ''} email={email} onChanged={onChanged} />
    </Section>
  );
}
