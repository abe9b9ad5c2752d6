// A node of the tests: an MQTT client that publishes readings with QoS 1 and leaves when the test ends.
import mqtt, { type IClientOptions, type MqttClient } from 'mqtt';
import { onTestFinished } from 'vitest';

export interface TestNode {
  readonly client: MqttClient;
  /** Publishes on the node's own topic of readings; resolves when it is acknowledged. Text is sent as it is, anything else as JSON. */
  send(payload: unknown): Promise<void>;
}

/** Connects once; it does not come back by itself. */
export async function connectNode(port: number | null, name: string, options: IClientOptions = {}): Promise<TestNode> {
  const client = await mqtt.connectAsync(`mqtt://127.0.0.1:${port}`, { reconnectPeriod: 0, ...options });
  // A broken connection is told by its 'close'; what broke it is not the test's concern.
  client.on('error', () => undefined);
  onTestFinished(() => client.endAsync(true));
  return {
    client,
    async send(payload) {
      const text = typeof payload === 'string' || payload instanceof Uint8Array ? payload : JSON.stringify(payload);
      await client.publishAsync(`takewell/v1/${name}/readings`, text as string | Buffer, { qos: 1 });
    },
  };
}

/** Resolves when the other side has closed the connection. */
export function whenClosed(client: MqttClient): Promise<void> {
  return new Promise((resolve) => client.once('close', () => resolve()));
}
