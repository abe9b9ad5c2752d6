// The node that publishes: where to, what, with which name and password; and what has been heard of it, or why it was refused.
import { useState } from 'preact/hooks';
import type { BrokerAddress, ProbeView, RefusedView } from '../../shared/api/probes.ts';
import { agoWords } from '../age.ts';
import { calls } from '../calls.ts';
import { slowNowMs } from '../clock.ts';
import { words } from '../late-strings.ts';
import { ShownOnce } from '../pages/node-list.tsx';
import { Field } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { withHumidity, withTemperature } from '../quantities.ts';
import { CopyLine } from './copy-line.tsx';
import { Step } from './step.tsx';

interface Props {
  readonly broker: BrokerAddress;
  readonly probes: readonly ProbeView[];
  /** The newest message that could not be read; undefined when there was none. */
  readonly refused: RefusedView | undefined;
  readonly isNow: boolean;
}

function addressOf({ scheme, host, port }: BrokerAddress): string {
  return `${scheme}://${host ?? location.hostname}${port === null ? '' : `:${port}`}`;
}

/** A node and its password made in place, for a broker that asks for them. */
function Credentials({ onMade }: { readonly onMade: (id: string) => void }) {
  const [made, setMade] = useState<{ name: string; password: string }>();
  const send = async (fields: FormData) => {
    const id = textOf(fields, 'id');
    const known = (await calls.nodes()).some((node) => node.id === id);
    if (!known) await calls.addNode(id);
    setMade(await calls.makeCredentials(id));
    onMade(id);
  };
  return (
    <>
      <Form onSend={send} act={words.sensors.makeCredentials} label={words.sensors.makeCredentials}>
        <Field
          name="id"
          label={words.sensors.nodeId}
          hint={words.sensors.nodeIdHint}
          value={words.guide.nodeExample}
          required
          autoComplete="off"
        />
      </Form>
      {made !== undefined && <ShownOnce {...made} />}
    </>
  );
}

export function NodeStep({ broker, probes, refused, isNow }: Props) {
  const heard = probes.filter(({ last }) => last !== null);
  const isHeard = heard.length > 0;
  const isWrong = !isHeard && refused !== undefined;
  const url = addressOf(broker);
  // A node publishes under the name it signs in with.
  const [nodeId, setNodeId] = useState<string>(words.guide.nodeExample);
  const topic = words.guide.topic(nodeId);
  return (
    <Step
      title={words.guide.node}
      why={words.guide.nodeWhy}
      state={isHeard ? 'done' : isWrong ? 'wrong' : isNow ? 'now' : 'later'}
    >
      <div role="status" class="heard">
        {!isHeard && !isWrong && <p>{words.guide.waiting}</p>}
        {heard.map(({ id, nodeId, address, last }) => (
          <p key={id}>
            <b>
              {words.guide.weHear(withTemperature(last?.temperature ?? null), withHumidity(last?.humidity ?? null))}
            </b>{' '}
            {words.sensors.where(nodeId, address)}, {agoWords(slowNowMs.value - Date.parse(last?.at ?? ''))}
          </p>
        ))}
        {isWrong && (
          <p class="fault">
            {words.guide.wrong(refused.topic, words.sensors.refusedWhere(refused.reason, refused.where))}
          </p>
        )}
      </div>
      {!isHeard && isNow && (
        <>
          {broker.isThisMachineOnly && <p class="hindrance">{words.guide.thisMachineOnly}</p>}
          <CopyLine name={words.guide.address} text={url} />
          <CopyLine name={words.guide.topicName} text={topic} />
          <CopyLine name={words.guide.payloadName} text={words.sensors.payload} />
          {broker.needsCredentials && <Credentials onMade={setNodeId} />}
          <details>
            <summary>{words.guide.noSensor}</summary>
            <p>{words.guide.noSensorWhy}</p>
            <CopyLine name={words.guide.command} text={words.guide.simulate(url)} />
          </details>
        </>
      )}
    </Step>
  );
}
