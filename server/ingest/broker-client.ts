// The connection to a broker that runs elsewhere. A message is acknowledged when it is stored; one that cannot be stored breaks the connection,
// and the broker sends it again.
import mqtt, { type MqttClient } from 'mqtt';
import type { Logger } from 'pino';
import { type Finding, finding } from '../../shared/finding.ts';
import type { Clock } from '../clock.ts';
import { type Broker, isOwnOutput, OWN_FILTERS, SERVICE_STATUS_TOPIC } from './broker.ts';
import { holdAcknowledgements } from './hold-acknowledgements.ts';
import { holdTopic } from './hold-topic.ts';
import type { Intake } from './intake.ts';

export interface BrokerClientParts {
  readonly url: string;
  /** Fixed for this installation: the broker keeps what came while the service was away. */
  readonly clientId: string;
  readonly intake: Intake;
  readonly clock: Clock;
  readonly log: Logger;
}

const GOODBYE_MS = 2_000;

/** Starts connecting and keeps at it; resolves at once, so that the service is up while the broker is not. */
export function openBrokerClient(parts: BrokerClientParts): Broker {
  const { intake, clock, log } = parts;
  let filters: string[] = [...OWN_FILTERS];
  const url = redact(parts.url);
  let trouble: Finding | null = finding('brokerSilent', url);
  const client = mqtt.connect(parts.url, {
    clientId: parts.clientId,
    clean: false,
    protocolVersion: 4,
    keepalive: 30,
    reconnectPeriod: 2_000,
    connectTimeout: 10_000,
    reconnectOnConnackError: true,
    queueQoSZero: false,
    will: { topic: SERVICE_STATUS_TOPIC, payload: Buffer.from('offline'), qos: 1, retain: true },
  });
  holdAcknowledgements(client, async ({ topic, payload, retain }) => {
    // Our own words come back through the filters: nothing new, and nothing to refuse.
    if (isOwnOutput(topic)) return;
    try {
      const bytes = typeof payload === 'string' ? Buffer.from(payload) : payload;
      await intake.push({ topic, payload: bytes, arrivalMs: clock.nowMs(), retained: retain });
    } catch (error) {
      log.error({ err: error }, 'a message was not stored: reconnecting, the broker sends it again');
      throw error;
    }
  });
  const subscribe = async () => {
    await client.subscribeAsync(filters, { qos: 1 });
    await client.publishAsync(SERVICE_STATUS_TOPIC, 'online', { qos: 1, retain: true });
    trouble = null;
  };
  client.on('connect', () => {
    log.info('connected to the broker');
    subscribe().catch((error: unknown) => {
      trouble = finding('brokerRefuses', String(error));
      log.error({ err: error }, 'the subscriptions were refused');
    });
  });
  client.on('close', () => {
    trouble = finding('brokerLost', url);
  });
  client.on('error', (error) => {
    trouble = finding('brokerFails', url, error.message);
    log.warn({ err: error }, 'trouble with the broker');
  });
  return {
    port: null,
    trouble: () => trouble,
    async publish(topic, payload) {
      if (client.connected) await client.publishAsync(topic, payload, { qos: 1, retain: true });
    },
    hold: (holding) => holdTopic({ ...holding, url: parts.url, clientId: `${parts.clientId}-t` }),
    async follow(more) {
      const gone = filters.filter((one) => !more.includes(one) && !isOwnFilter(one));
      filters = [...OWN_FILTERS, ...more];
      if (!client.connected) return;
      if (gone.length > 0) await client.unsubscribeAsync(gone);
      await client.subscribeAsync(filters, { qos: 1 });
    },
    close: () => sayGoodbye(client, log),
  };
}

// A broker that does not answer the farewell is not waited for: the connection is cut, and the last will says the same.
async function sayGoodbye(client: MqttClient, log: Logger): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const tooLong = new Promise<void>((resolve) => {
    timer = setTimeout(resolve, GOODBYE_MS);
  });
  const left = leave(client).catch((error: unknown) =>
    log.warn({ err: error }, 'the broker was left without a goodbye'),
  );
  await Promise.race([left, tooLong]);
  clearTimeout(timer);
  await client.endAsync(true);
}

async function leave(client: MqttClient): Promise<void> {
  // A clean goodbye suppresses the last will: the offline state is said outright.
  if (client.connected) await client.publishAsync(SERVICE_STATUS_TOPIC, 'offline', { qos: 1, retain: true });
  if (client.connected) await client.endAsync();
}

function isOwnFilter(filter: string): boolean {
  return (OWN_FILTERS as readonly string[]).includes(filter);
}

/** The address without its password. */
function redact(url: string): string {
  const parsed = new URL(url);
  parsed.password = '';
  return parsed.toString();
}
