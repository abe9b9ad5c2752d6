// A lamp on the broker: follows the siren’s topic and its reason, and remembers what it was told, in order.
import mqtt from 'mqtt';
import { expect, onTestFinished } from 'vitest';

export interface Lamp {
  /** Every `on` and `off` so far. */
  readonly heard: readonly string[];
  /** Every reason so far, read as JSON. */
  readonly reasons: readonly Record<string, unknown>[];
}

export const SIREN = 'takewell/v1/siren';

/** Connects and waits for the retained state; gone with the test. */
export async function openLamp(port: number): Promise<Lamp> {
  const heard: string[] = [];
  const reasons: Record<string, unknown>[] = [];
  const client = await mqtt.connectAsync(`mqtt://127.0.0.1:${port}`);
  client.on('message', (topic, payload) => {
    if (topic === SIREN) heard.push(payload.toString());
    else reasons.push(JSON.parse(payload.toString()));
  });
  onTestFinished(() => client.endAsync(true).then(() => undefined));
  await client.subscribeAsync([SIREN, `${SIREN}/reason`], { qos: 1 });
  // A service that has just reached the broker says it with its next round.
  await expect.poll(() => heard.length, { timeout: 10_000 }).toBeGreaterThan(0);
  return { heard, reasons };
}

/** What is retained for a lamp that is switched on now. */
export async function retainedSiren(port: number): Promise<string> {
  const client = await mqtt.connectAsync(`mqtt://127.0.0.1:${port}`);
  const first = new Promise<string>((resolve) =>
    client.on('message', (_topic, payload) => resolve(payload.toString())),
  );
  await client.subscribeAsync(SIREN, { qos: 1 });
  const state = await first;
  await client.endAsync();
  return state;
}
