// Both ends of an alert, in a thread of their own with one clock: the node that publishes the reading and the push service that is asked to
// tell of it, beside nodes that send at a steady rate. The same for floor and service.
import { setTimeout as pause } from 'node:timers/promises';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import mqtt, { type MqttClient } from 'mqtt';
import { type HttpPeer, openHttpPeer } from '../support/http-peer.ts';

export interface AlertTrial {
  readonly brokerPort: number;
  /** Their next reading, of `hot` °C, is to be told at once: one POST each. */
  readonly hotNodes: readonly string[];
  readonly hot: number;
  /** Send good air meanwhile, in turn. */
  readonly quietNodes: readonly string[];
  readonly readingsPerSecond: number;
}

export interface AlertPeer {
  /** Where pushes go. */
  readonly origin: string;
  /** Milliseconds from handing the reading to the node's client until the whole request has come, for each hot node. */
  measure(trial: AlertTrial): Promise<number[]>;
  close(): Promise<void>;
}

/** Longer than any delivery that is worth measuring; a retry would come later. */
const LOST_AFTER_MS = 5_000;
const BEFORE_MS = 500;

export async function openAlertPeer(): Promise<AlertPeer> {
  const worker = new Worker(new URL(import.meta.url), { workerData: 'alert-peer' });
  const answer = <T>() =>
    new Promise<T>((resolve, reject) => {
      worker.once('error', reject);
      worker.once('message', (message: T) => {
        worker.off('error', reject);
        resolve(message);
      });
    });
  const origin = await answer<string>();
  return {
    origin,
    measure(trial) {
      worker.postMessage(trial);
      return answer<number[]>();
    },
    close: async () => void (await worker.terminate()),
  };
}

async function serveInWorker(): Promise<void> {
  let told: (() => void) | null = null;
  const peer: HttpPeer = await openHttpPeer(() => {
    if (told === null) throw new Error('something was told that nobody asked for: the figures mean nothing');
    told();
    told = null;
    return { status: 201 };
  });
  const nextPush = () =>
    new Promise<void>((resolve, reject) => {
      const lost = setTimeout(() => reject(new Error('a reading was not told')), LOST_AFTER_MS);
      told = () => {
        clearTimeout(lost);
        resolve();
      };
    });
  parentPort?.on('message', async (trial: AlertTrial) => parentPort?.postMessage(await tryAll(trial, nextPush)));
  parentPort?.postMessage(peer.origin);
}

async function tryAll(trial: AlertTrial, nextPush: () => Promise<void>): Promise<number[]> {
  const node = await mqtt.connectAsync(`mqtt://127.0.0.1:${trial.brokerPort}`, { reconnectPeriod: 0 });
  const others = await mqtt.connectAsync(`mqtt://127.0.0.1:${trial.brokerPort}`, { reconnectPeriod: 0 });
  const stop = sendSteadily(others, trial);
  await pause(BEFORE_MS);
  const tookMs: number[] = [];
  for (const [n, name] of trial.hotNodes.entries()) {
    const pushed = nextPush();
    const startMs = performance.now();
    node.publish(topicOf(name), JSON.stringify({ temperature: trial.hot, humidity: 96 }), { qos: 1 });
    await pushed;
    tookMs.push(performance.now() - startMs);
    // Not in step with anything that comes at a steady pace.
    await pause(20 + ((n * 7) % 23));
  }
  stop();
  await node.endAsync();
  await others.endAsync();
  return tookMs;
}

/** Spread evenly, as far as the timer of a millisecond goes; what it missed is made up for. */
function sendSteadily(client: MqttClient, { quietNodes, readingsPerSecond }: AlertTrial): () => void {
  const startMs = performance.now();
  let sent = 0;
  const timer = setInterval(() => {
    const due = ((performance.now() - startMs) * readingsPerSecond) / 1_000;
    for (; sent < due; sent += 1) {
      const swing = Math.sin(sent / 500);
      const air = {
        temperature: Math.round(2_300 + 100 * swing) / 100,
        humidity: Math.round(9_600 + 50 * swing) / 100,
      };
      client.publish(topicOf(quietNodes[sent % quietNodes.length] ?? ''), JSON.stringify(air), { qos: 1 });
    }
  }, 1);
  return () => clearInterval(timer);
}

function topicOf(node: string): string {
  return `takewell/v1/${node}/readings`;
}

if (!isMainThread && workerData === 'alert-peer') await serveInWorker();
