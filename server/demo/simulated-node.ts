// A node as it would hang in a tent: an MQTT client of its own that says online, leaves offline as its last will, and publishes with QoS 1.
import mqtt from 'mqtt';
import type { Logger } from 'pino';
import type { IncomingReading } from '../../shared/readings/reading.ts';
import type { WritePayload } from './write-payload.ts';

export interface SimulatedNode {
  readonly name: string;
  /** Resolves when every reading is acknowledged, which is when it is stored. */
  publish(readings: readonly IncomingReading[]): Promise<void>;
  /** Says goodbye: the broker sends the last will only for a node that vanishes. */
  close(): Promise<void>;
}

interface NodeOptions {
  /** Of the broker. */
  readonly url: string;
  readonly name: string;
  readonly secret: string;
  readonly write: WritePayload;
  readonly log: Logger;
}

/** A buffer that has grown while the machine slept goes out in pieces of so many readings. */
const PACK = 1_000;
const kept = { qos: 1, retain: true } as const;

/** Connects; rejects when the broker does not let it in. */
export async function connectNode({ url, name, secret, write, log }: NodeOptions): Promise<SimulatedNode> {
  const topic = (last: 'readings' | 'status') => `takewell/v1/${name}/${last}`;
  const client = await mqtt.connectAsync(url, {
    clientId: name,
    username: name,
    password: secret,
    will: { topic: topic('status'), payload: Buffer.from('offline'), ...kept },
    // Its own broker, in this process: there is nobody between them to be fooled by.
    rejectUnauthorized: false,
  });
  // The client connects again by itself, and what was not acknowledged goes out again.
  client.on('error', (error) => log.warn({ err: error, node: name }, 'a simulated node lost its broker'));
  await client.publishAsync(topic('status'), 'online', kept);
  return {
    name,
    async publish(readings) {
      for (let from = 0; from < readings.length; from += PACK) {
        await client.publishAsync(topic('readings'), write(readings.slice(from, from + PACK)), { qos: 1 });
      }
    },
    async close() {
      const isReachable = client.connected;
      if (isReachable) await client.publishAsync(topic('status'), 'offline', kept);
      await client.endAsync(!isReachable);
    },
  };
}
