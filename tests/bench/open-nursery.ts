// The production service with sixty tents, each with a probe and a batch somewhere in its healing, two days of readings behind it and one of now.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pino from 'pino';
import { openApp } from '../../server/app.ts';
import { systemClock } from '../../server/clock.ts';
import { readSettings } from '../../server/settings.ts';
import { HOUR_MS, MINUTE_MS, utcText } from '../../shared/units.ts';
import { type ApiClient, createApiClient } from '../support/api-client.ts';

export interface Nursery {
  readonly url: string;
  readonly api: ApiClient;
  /** Sends a reading of now from the probe of the n-th tent; resolves when it is stored and told to the screens. */
  measure(tent: number, temperature: number): Promise<void>;
  close(): Promise<void>;
}

export const TENTS = 60;
export const BENCH_MANAGER = { name: 'Bench', password: 'a password for the bench' };
const PAST_HOURS = 48;
const STEP_MS = 5 * MINUTE_MS;

export async function openNursery(): Promise<Nursery> {
  const folder = await mkdtemp(join(tmpdir(), 'takewell-bench-'));
  const code = 'set-up-code-of-the-bench';
  const free = { TAKEWELL_HTTP_PORT: '0', TAKEWELL_MQTT_PORT: '0', TAKEWELL_SETUP_CODE: code };
  const settings = readSettings({ ...free, TAKEWELL_DATA_DIR: folder });
  const app = await openApp({ settings, clock: systemClock, log: pino({ level: 'silent' }) });
  const api = createApiClient(app.url);
  await api.post('/setup', { code, ...BENCH_MANAGER });
  const send = (tent: number, readings: object) =>
    app.intake.push({
      topic: `takewell/v1/node-${tent}/readings`,
      payload: new TextEncoder().encode(JSON.stringify(readings)),
      arrivalMs: Date.now(),
      retained: false,
    });
  const measure = async (tent: number, temperature: number) => void (await send(tent, { temperature, humidity: 95 }));
  for (let tent = 0; tent < TENTS; tent += 1) {
    await addTent(api, tent);
    await send(tent, pastOf(tent));
    await measure(tent, 23);
  }
  return {
    ...{ url: app.url, api, measure },
    async close() {
      await app.close();
      await rm(folder, { recursive: true });
    },
  };
}

async function addTent(api: ApiClient, tent: number): Promise<void> {
  const { body } = await api.post<{ id: string }>('/chambers', { name: `Tent ${tent + 1}` });
  await api.post('/probes', { nodeId: `node-${tent}`, address: '', chamberId: body.id, place: 'canopy' });
  const closedAt = utcText(Date.now() - (20 + (tent % 7) * 24) * HOUR_MS);
  const names = { code: `B-${tent + 1}`, scion: 'S-21', rootstock: 'R-7', trays: 20, plants: 1000 };
  await api.post('/batches', { chamberId: body.id, profileId: 'tomato-common-practice', closedAt, ...names });
}

function pastOf(tent: number): object[] {
  const count = (PAST_HOURS * HOUR_MS) / STEP_MS;
  const startMs = Date.now() - PAST_HOURS * HOUR_MS;
  return Array.from({ length: count }, (_, n) => {
    const swing = Math.sin(n / 40 + tent);
    const time = utcText(startMs + n * STEP_MS);
    return { time, temperature: Math.round((23 + 2 * swing) * 100) / 100, humidity: Math.round(950 + 20 * swing) / 10 };
  });
}
