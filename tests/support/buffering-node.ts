// A node as a good one is: it keeps each reading until it is acknowledged, and after a lost connection sends again what was not.
import mqtt, { type MqttClient } from 'mqtt';

export interface BufferingNode<T> {
  /** Takes a reading into the buffer; sends it at once when there is a connection. */
  add(reading: T): void;
  /** Connects anew and sends the buffer in its order; false when nobody answers at that port. */
  connect(port: number): Promise<boolean>;
  isConnected(): boolean;
  /** In the order of their acknowledgements. */
  readonly acknowledged: readonly T[];
  /** How many are still in the buffer. */
  waiting(): number;
  close(): Promise<void>;
}

export function createBufferingNode<T>(name: string): BufferingNode<T> {
  const buffer = new Set<{ readonly reading: T }>();
  const acknowledged: T[] = [];
  let client: MqttClient | null = null;
  const send = (to: MqttClient, entry: { readonly reading: T }) => {
    to.publish(`takewell/v1/${name}/readings`, JSON.stringify(entry.reading), { qos: 1 }, (error) => {
      // Without its acknowledgement it stays in the buffer. One that another connection has brought meanwhile counts once.
      if (!error && buffer.delete(entry)) acknowledged.push(entry.reading);
    });
  };
  const leave = async () => {
    const old = client;
    client = null;
    await old?.endAsync(true);
  };
  return {
    add(reading) {
      const entry = { reading };
      buffer.add(entry);
      if (client?.connected) send(client, entry);
    },
    async connect(port) {
      await leave();
      const next = mqtt.connect(`mqtt://127.0.0.1:${port}`, { reconnectPeriod: 0, connectTimeout: 5_000 });
      const isUp = await new Promise<boolean>((resolve) => {
        next.on('connect', () => resolve(true));
        next.on('close', () => resolve(false));
        next.on('error', () => resolve(false));
      });
      if (!isUp) {
        await next.endAsync(true);
        return false;
      }
      client = next;
      for (const entry of buffer) send(next, entry);
      return true;
    },
    isConnected: () => client?.connected ?? false,
    acknowledged,
    waiting: () => buffer.size,
    close: leave,
  };
}
