// The publisher of the benchmarks: one MQTT client in a thread of its own that keeps a window of QoS 1 messages under way, the same for floor and
// service. Run as a worker it publishes what it is given and answers with the milliseconds it took.
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import mqtt from 'mqtt';

export interface Publishing {
  readonly port: number;
  /** Topic and payload of each message, in order. */
  readonly messages: readonly (readonly [topic: string, payload: string])[];
  /** How many may be unacknowledged at a time. */
  readonly window: number;
}

/** Publishes all messages; resolves with the milliseconds from the first to the last acknowledgement. */
export function publishAll(publishing: Publishing): Promise<number> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL(import.meta.url), { workerData: publishing });
    worker.once('message', (ms: number) => resolve(ms));
    worker.once('error', reject);
  });
}

async function publishInWorker({ port, messages, window }: Publishing): Promise<number> {
  const client = await mqtt.connectAsync(`mqtt://127.0.0.1:${port}`, { reconnectPeriod: 0 });
  const startMs = performance.now();
  await new Promise<void>((resolve, reject) => {
    let sent = 0;
    let acknowledged = 0;
    const next = () => {
      const message = messages[sent];
      if (message === undefined) return;
      sent += 1;
      client.publish(message[0], message[1], { qos: 1 }, (error) => {
        if (error) return reject(error);
        acknowledged += 1;
        if (acknowledged === messages.length) resolve();
        else next();
      });
    };
    for (let n = 0; n < window; n += 1) next();
  });
  const tookMs = performance.now() - startMs;
  await client.endAsync();
  return tookMs;
}

if (!isMainThread) parentPort?.postMessage(await publishInWorker(workerData as Publishing));
