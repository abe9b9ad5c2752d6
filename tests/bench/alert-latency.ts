// How long it takes from a reading to the push: from handing it to the node's MQTT client until the push service has the whole request,
// as a ratio to a bare subscriber that POSTs at once, and for knowing to one that also stores and encrypts. In between lie admission, the durable commit with alarm and notice, message and
// encryption. Heat has a delay by design, which is not in it: each hot tent is warmed first, then the service's clock is turned past the
// delay, and what is measured is the reading that completes it. The watch's own rounds are off, or they would tell before that reading.
import { systemClock } from '../../server/clock.ts';
import { HOUR_MS, SECOND_MS, utcText } from '../../shared/units.ts';
import { createTestClock } from '../support/test-clock.ts';
import { type AlertFloor, makePhone, openBareFloor, openOwingFloor } from './alert-floor.ts';
import { type AlertPeer, type AlertTrial, openAlertPeer } from './alert-peer.ts';
import { type BenchLine, makeLine } from './bench-line.ts';
import { type BenchSite, nodes, openBenchSite } from './open-bench-site.ts';
import { publishAll } from './publisher.ts';

/** A tent tells once, and from the eleventh alarm in ten minutes on a site tells of a flood too: so few tents, and a new site for the next. */
const TENTS = 10;
const ROUNDS = 20;
const RATES = [10, 1_000];
/** Beyond the critical limit: such an alarm is told by itself, however many there are. */
const HOT = 34;
/** Longer than the delay of heat, and shorter than silence. */
const TURN_MS = 40 * SECOND_MS;

const hotNodes = Array.from({ length: TENTS }, (_, n) => `hot-${n + 1}`);

export async function* measureAlertLatency(): AsyncGenerator<BenchLine> {
  const peer = await openAlertPeer();
  try {
    for (const rate of RATES) yield* measureAt(rate, peer);
  } finally {
    await peer.close();
  }
}

async function* measureAt(readingsPerSecond: number, peer: AlertPeer): AsyncGenerator<BenchLine> {
  const trial = { hotNodes, hot: HOT, quietNodes: nodes, readingsPerSecond };
  const bare: number[] = [];
  const owing: number[] = [];
  const measured: number[] = [];
  // The first of each warms the program up.
  for (let round = 0; round <= ROUNDS; round += 1) {
    const [least, owed] = [await tryFloor(openBareFloor, trial, peer), await tryFloor(openOwingFloor, trial, peer)];
    const served = await tryService(trial, peer);
    if (round === 0) continue;
    bare.push(...least);
    owing.push(...owed);
    measured.push(...served);
  }
  const beside = `beside ${readingsPerSecond.toLocaleString('en')} readings/s`;
  for (const [name, share, bar] of [
    ['p50', 0.5, 'no bar'],
    ['p99', 0.99, 'at most 2'],
  ] as const) {
    const least = { floor: at(bare, share), measured: at(measured, share) };
    const owed = { floor: at(owing, share), measured: at(measured, share) };
    yield makeLine(`reading to push request, ${name}, ${beside}`, 'ms', bar, [least]);
    yield makeLine(`the same, ${name}, floor with commit and encryption`, 'ms', 'for knowing', [owed]);
  }
}

type Trial = Omit<AlertTrial, 'brokerPort'>;

type OpenFloor = (url: string, hot: number) => Promise<AlertFloor>;

async function tryFloor(open: OpenFloor, trial: Trial, peer: AlertPeer): Promise<number[]> {
  const floor = await open(`${peer.origin}/push`, HOT);
  const tookMs = await peer.measure({ ...trial, brokerPort: floor.port });
  await floor.close();
  return tookMs;
}

async function tryService(trial: Trial, peer: AlertPeer): Promise<number[]> {
  const turned = createTestClock(0);
  const clock = {
    nowMs: () => systemClock.nowMs() + turned.nowMs(),
    steadyMs: () => systemClock.steadyMs() + turned.nowMs(),
  };
  const site = await openBenchSite({}, { clock, roundMs: 0, allowLocalPush: true });
  await addPhone(site, peer.origin);
  for (const node of hotNodes) await addTent(site, node);
  const warm = JSON.stringify({ temperature: HOT, humidity: 96 });
  const messages = hotNodes.map((node) => [`takewell/v1/${node}/readings`, warm] as const);
  await publishAll({ port: site.port, messages, window: 20 });
  turned.advance(TURN_MS);
  const tookMs = await peer.measure({ ...trial, brokerPort: site.port });
  await site.close();
  return tookMs;
}

async function addPhone({ api }: BenchSite, origin: string): Promise<void> {
  await api.post('/phones', { name: 'Phone', subscription: { endpoint: `${origin}/push`, keys: makePhone() } });
}

async function addTent({ api }: BenchSite, nodeId: string): Promise<void> {
  const { body } = await api.post<{ id: string }>('/chambers', { name: `Tent of ${nodeId}` });
  const closedAt = utcText(Date.now() - 30 * HOUR_MS);
  await api.post('/probes', { nodeId, address: '', chamberId: body.id, place: 'canopy' });
  await api.post('/batches', { chamberId: body.id, profileId: 'tomato-common-practice', code: nodeId, closedAt });
}

/** The value below which this share of them lies. */
function at(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.ceil(sorted.length * share) - 1] ?? Number.NaN;
}
