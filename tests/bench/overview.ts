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
  const firsts: { floor: number; measured: number }[] = [];
  for (let round = 0; round <= ROUNDS; round += 1) {
    const [bare, ours] = [
      await timeAsking(agent, floorUrl, cookie, ASKED),
      await timeAsking(agent, `${nursery.url}/api/v1/chambers`, cookie, ASKED),
    ];
    await untilNextSecond();
    const first = await timeAsking(agent, `${nursery.url}/api/v1/chambers`, cookie, 1);
    if (bare.bytes !== ours.bytes) throw new Error(`${ours.bytes} bytes beside ${bare.bytes}: not the same answer`);
    if (round === 0) continue;
    pairs.push({ floor: bare.ms, measured: ours.ms });
    firsts.push({ floor: bare.ms, measured: first.ms });
  }
  agent.destroy();
  await floor.close();
  await nursery.close();
  yield makeLine(`overview of ${TENTS} chambers, many screens at once`, 'ms', 'at most 2', pairs);
  const first = `overview of ${TENTS} chambers, put together anew`;
  yield makeLine(first, 'ms', 'for knowing: once a second at most', firsts);
}

/** A text is kept for the second in which it was made. */
async function untilNextSecond(): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve, 1_005 - (Date.now() % 1_000)));
}

async function timeAsking(
  agent: Agent,
  url: string,
  cookie: string,
  times: number,
): Promise<{ ms: number; bytes: number }> {
  let bytes = 0;
  const startMs = performance.now();
  for (let n = 0; n < times; n += 1) bytes = await ask(agent, url, cookie);
  return { ms: (performance.now() - startMs) / times, bytes };
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
