// The overview of sixty chambers over HTTP, beside a bare route of the same library that answers the same value on a connection kept alive.
import { Agent, request } from 'node:http';
import fastify from 'fastify';
import { type BenchLine, makeLine } from './bench-line.ts';
import { openNursery, TENTS } from './open-nursery.ts';

const ROUNDS = 9;
const ASKED = 60;

export async function* measureOverview(): AsyncGenerator<BenchLine> {
  const nursery = await openNursery();
  const { body } = await nursery.api.get<object>('/chambers');
  const floor = fastify();
  floor.get('/', async () => body);
  const floorUrl = await floor.listen({ host: '127.0.0.1', port: 0 });
  const agent = new Agent({ keepAlive: true, maxSockets: 1 });
  const cookie = nursery.api.cookie();
  const pairs: { floor: number; measured: number }[] = [];
  for (let round = 0; round <= ROUNDS; round += 1) {
    const bare = await timeAsking(agent, floorUrl, cookie);
    const ours = await timeAsking(agent, `${nursery.url}/api/v1/chambers`, cookie);
    if (bare.bytes !== ours.bytes) throw new Error(`${ours.bytes} bytes beside ${bare.bytes}: not the same answer`);
    if (round > 0) pairs.push({ floor: bare.ms, measured: ours.ms });
  }
  agent.destroy();
  await floor.close();
  await nursery.close();
  yield makeLine(`overview of ${TENTS} chambers, one answer`, 'ms', 'at most 2', pairs);
}

async function timeAsking(agent: Agent, url: string, cookie: string): Promise<{ ms: number; bytes: number }> {
  let bytes = 0;
  const startMs = performance.now();
  for (let n = 0; n < ASKED; n += 1) bytes = await ask(agent, url, cookie);
  return { ms: (performance.now() - startMs) / ASKED, bytes };
}

function ask(agent: Agent, url: string, cookie: string): Promise<number> {
  return new Promise((resolve, reject) => {
    const asked = request(url, { agent, headers: { cookie } }, (answer) => {
      let bytes = 0;
      answer.on('data', (part: Buffer) => {
        bytes += part.length;
      });
      answer.on('end', () => resolve(answer.statusCode === 200 ? bytes : -1));
    });
    asked.on('error', reject);
    asked.end();
  });
}
