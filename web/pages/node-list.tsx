// The nodes and their broker credentials. A password is shown once and never again.
import { useState } from 'preact/hooks';
import type { NodeView } from '../../shared/api/probes.ts';
import { spanWords } from '../age.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { slowNowMs } from '../clock.ts';
import { words } from '../late-strings.ts';
import { ActButton } from '../parts/act-button.tsx';
import { Disclosure } from '../parts/disclosure.tsx';
import { Field } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { batteryWords } from '../probe-hints.ts';
import { maySetUp } from '../session.ts';

const { sensors } = words;

interface Credentials {
  readonly name: string;
  readonly password: string;
}

/** What is shown once and never again. */
export function ShownOnce({ name, password }: Credentials) {
  return (
    <div class="shown-once" role="status">
      <p>{sensors.credentialsOnce}</p>
      <dl class="facts">
        <div>
          <dt>{sensors.credentialName}</dt>
          <dd>
            <code>{name}</code>
          </dd>
        </div>
        <div>
          <dt>{sensors.credentialPassword}</dt>
          <dd>
            <code>{password}</code>
          </dd>
        </div>
      </dl>
    </div>
  );
}

function NodeItem({ node, onChanged }: { readonly node: NodeView; readonly onChanged: () => void }) {
  const [made, setMade] = useState<Credentials>();
  const make = async () => {
    setMade(await calls.makeCredentials(node.id));
    onChanged();
  };
  const status = sensors.nodeStatus[node.status];
  const battery = batteryWords(node.battery, slowNowMs.value);
  const act = node.hasCredentials ? sensors.makeNew : sensors.makeCredentials;
  return (
    <li class="node">
      <h3>{node.id}</h3>
      <p>
        {node.statusAt === null
          ? status
          : sensors.statusFor(status, spanWords(slowNowMs.value - Date.parse(node.statusAt)))}
      </p>
      <p class="details">
        {battery !== null && <span>{battery}</span>}
        <span>{node.hasCredentials ? sensors.hasCredentials : sensors.noCredentials}</span>
      </p>
      {maySetUp.value && (
        <ActButton work={make} label={sensors.makeFor(act, node.id)}>
          {act}
        </ActButton>
      )}
      {made !== undefined && <ShownOnce {...made} />}
    </li>
  );
}

function AddNode({ onChanged }: { readonly onChanged: () => void }) {
  const send = (close: () => void) => async (fields: FormData) => {
    const id = textOf(fields, 'id');
    await calls.addNode(id);
    showNote(sensors.nodeAdded(id));
    close();
    onChanged();
  };
  return (
    <Disclosure title={sensors.addNode}>
      {(close) => (
        <Form onSend={send(close)} act={sensors.addNode} onCancel={close}>
          <Field name="id" label={sensors.nodeId} hint={sensors.nodeIdHint} required autoComplete="off" />
        </Form>
      )}
    </Disclosure>
  );
}

export function NodeList({
  nodes,
  onChanged,
}: {
  readonly nodes: readonly NodeView[];
  readonly onChanged: () => void;
}) {
  return (
    <>
      {nodes.length === 0 && <p class="quiet-line">{sensors.noNodes}</p>}
      <ul class="node-list">
        {nodes.map((node) => (
          <NodeItem key={node.id} node={node} onChanged={onChanged} />
        ))}
      </ul>
      {maySetUp.value && <AddNode onChanged={onChanged} />}
    </>
  );
}
