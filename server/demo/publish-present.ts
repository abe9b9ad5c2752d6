// The present of the demo: each simulated tent's node publishes what it measures, in real time, to the broker like any other node.
import type { Logger } from 'pino';
import type { Settings } from '../settings.ts';
import { connectNode, type SimulatedNode } from './simulated-node.ts';
import type { RunningTents } from './start-tents.ts';
import type { StoredNursery } from './store-nursery.ts';
import { writePlainJson, writeSenml } from './write-payload.ts';

/** How often a node of the present measures and publishes. */
export const PRESENT_STEP_MS = 5_000;

export interface Present {
  /** Publishes everything measured since the last call, up to `nowMs`; resolves when it is stored. */
  publish(nowMs: number): Promise<void>;
  close(): Promise<void>;
}

/** Connects the nodes of the nursery to the broker that listens as `mqtt` says. */
export async function connectPresent(
  { nursery, tents, houseSecret }: StoredNursery,
  running: RunningTents,
  mqtt: Settings['mqtt'],
  log: Logger,
): Promise<Present> {
  const url = `${mqtt.tls === null ? 'mqtt' : 'mqtts'}://${reachable(mqtt.host)}:${mqtt.port}`;
  const inTents = tents.map(({ tent, secret }) => ({ name: tent.node, secret }));
  const nodes = new Map<string, SimulatedNode>();
  for (const { name, secret } of [...inTents, { name: nursery.house.node, secret: houseSecret }]) {
    // Both forms of payload are shown at work: the first node speaks SenML.
    const write = nodes.size === 0 ? writeSenml : writePlainJson;
    nodes.set(name, await connectNode({ url, name, secret, write, log }));
  }
  return {
    async publish(nowMs) {
      const measured = running.advanceTo(nowMs, PRESENT_STEP_MS);
      await Promise.all(measured.map(({ node, readings }) => nodes.get(node)?.publish(readings)));
    },
    async close() {
      for (const node of nodes.values()) await node.close();
    },
  };
}

/** An address of this machine for a host to listen on. */
function reachable(host: string): string {
  if (host === '0.0.0.0') return '127.0.0.1';
  if (host === '::') return '[::1]';
  return host.includes(':') ? `[${host}]` : host;
}
