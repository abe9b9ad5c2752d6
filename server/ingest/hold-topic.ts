// A retained state that must not outlive this process: said over a connection of its own, whose last will takes it back. A main connection has
// one last will only, and that says that the service is gone.
import mqtt, { type MqttClient } from 'mqtt';
import type { Held, Holding } from './broker.ts';

interface HoldOptions extends Holding {
  readonly url: string;
  readonly clientId: string;
}

/** After one and a half of it the broker speaks the last will of a machine that fell silent (MQTT 3.1.1 §3.1.2.10). */
const KEEPALIVE_SECONDS = 5;
const ANSWER_MS = 5_000;

/** Resolves when the broker has acknowledged the state; rejects when it does not, and then nothing is held. */
export async function holdTopic({ url, clientId, topic, payload, afterwards }: HoldOptions): Promise<Held> {
  const will = { topic, payload: Buffer.from(afterwards), qos: 1, retain: true } as const;
  const client = mqtt.connect(url, {
    ...{ clientId, will, clean: true, protocolVersion: 4, keepalive: KEEPALIVE_SECONDS },
    // It is tried once: what is held ends with its connection.
    ...{ reconnectPeriod: 0, connectTimeout: ANSWER_MS },
  });
  // Whoever waits for an answer hears of it; without a listener it would end the process.
  client.on('error', () => undefined);
  const say = (text: string) => client.publishAsync(topic, text, { qos: 1, retain: true });
  // Cut off without a goodbye, so that the broker speaks the last will if it has the state already.
  const cutOff = async (error: unknown): Promise<never> => {
    await client.endAsync(true);
    throw error;
  };
  const begin = async () => {
    await untilConnected(client);
    await say(payload);
  };
  await inTime(client, begin()).catch(cutOff);
  return {
    followers: null,
    lost: new Promise((resolve) => client.once('close', () => resolve())),
    async letGo(isTakenOver) {
      if (!client.connected) return cutOff(new Error('the connection to the broker ended'));
      if (!isTakenOver) await inTime(client, say(afterwards)).catch(cutOff);
      // A clean goodbye suppresses the last will.
      await client.endAsync();
    },
  };
}

function untilConnected(client: MqttClient): Promise<void> {
  return new Promise((resolve) => client.once('connect', () => resolve()));
}

/** Rejects when the connection ends before, or nothing comes for five seconds. */
function inTime(client: MqttClient, work: Promise<unknown>): Promise<void> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error('the broker does not answer')), ANSWER_MS);
    const onClose = () => reject(new Error('the connection to the broker ended'));
    client.once('close', onClose);
    work
      .then(() => resolve(), reject)
      .finally(() => {
        clearTimeout(timer);
        client.off('close', onClose);
      });
  });
}
