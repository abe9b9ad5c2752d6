// The broker by the settings: the embedded one, or the connection to one that runs elsewhere.
import { nanoid } from 'nanoid';
import type { Logger } from 'pino';
import type { Clock } from '../clock.ts';
import { hashSecret, isSameText } from '../people/secrets.ts';
import type { Settings } from '../settings.ts';
import type { Store } from '../store/store.ts';
import type { Broker } from './broker.ts';
import { openBrokerClient } from './broker-client.ts';
import { openEmbeddedBroker } from './embedded-broker.ts';
import type { Intake } from './intake.ts';

interface OpenBrokerParts {
  readonly store: Store;
  readonly settings: Settings['mqtt'];
  readonly intake: Intake;
  readonly clock: Clock;
  readonly log: Logger;
  readonly filters: readonly string[];
}

/** Opens the broker that the settings ask for; `filters` are the topics of the mappings. Problems as `openEmbeddedBroker`. */
export async function openBroker({ store, settings, filters, ...parts }: OpenBrokerParts): Promise<Broker> {
  if (settings.url === null) {
    return openEmbeddedBroker({ ...parts, settings, checkNode: checkNode(store) });
  }
  const broker = openBrokerClient({ ...parts, url: settings.url, clientId: await clientId(store) });
  await broker.follow(filters);
  return broker;
}

/** Kept, so that the outside broker knows this installation again and hands over what it queued meanwhile. */
async function clientId(store: Store): Promise<string> {
  const known = await store.settings.get('mqttClientId');
  if (typeof known === 'string') return known;
  const made = `takewell-${nanoid(10)}`;
  await store.settings.put('mqttClientId', made);
  return made;
}

/** True for a node that brings its own name and password. */
function checkNode(store: Store) {
  return async (name: string, password: string): Promise<boolean> => {
    const node = (await store.probes.nodes()).find(({ id }) => id === name);
    return node?.passwordHash != null && isSameText(node.passwordHash, hashSecret(password));
  };
}
