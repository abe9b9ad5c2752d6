// The production service on a throw-away folder with five tents, each with four probes and a batch, and one screen that follows the stream.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pino from 'pino';
import { type AppOptions, openApp } from '../../server/app.ts';
import { systemClock } from '../../server/clock.ts';
import { readSettings } from '../../server/settings.ts';
import { HOUR_MS, utcText } from '../../shared/units.ts';
import { type ApiClient, createApiClient } from '../support/api-client.ts';

export interface BenchSite {
  readonly port: number;
  /** Signed in as the manager. */
  readonly api: ApiClient;
  stored(): Promise<number>;
  /** Resolves when so many readings are stored. */
  untilStored(count: number): Promise<void>;
  /** Resolves when the service says that it is ready: its broker is reached. */
  untilReady(): Promise<void>;
  close(): Promise<void>;
}

const TENTS = 5;
const PROBES_A_TENT = 4;

/** Nodes of the probes that stand in the tents, one probe each. */
export const nodes = Array.from({ length: TENTS * PROBES_A_TENT }, (_, n) => `node-${n + 1}`);

/** `options` replaces parts of the service, such as its clock. */
export async function openBenchSite(
  environment: Record<string, string> = {},
  options: Partial<Omit<AppOptions, 'settings'>> = {},
): Promise<BenchSite> {
  const folder = await mkdtemp(join(tmpdir(), 'takewell-bench-'));
  const code = 'set-up-code-of-the-bench';
  const settings = readSettings({
    TAKEWELL_DATA_DIR: folder,
    TAKEWELL_HTTP_PORT: '0',
    TAKEWELL_MQTT_PORT: '0',
    TAKEWELL_SETUP_CODE: code,
    ...environment,
  });
  const app = await openApp({ clock: systemClock, log: pino({ level: 'silent' }), ...options, settings });
  const api = createApiClient(app.url);
  await api.post('/setup', { code, name: 'Bench', password: 'a password for the bench' });
  for (let tent = 0; tent < TENTS; tent += 1) {
    const { body } = await api.post<{ id: string }>('/chambers', { name: `Tent ${tent + 1}` });
    const closedAt = utcText(Date.now() - 30 * HOUR_MS);
    const batch = { chamberId: body.id, profileId: 'tomato-common-practice', code: `B-${tent + 1}`, closedAt };
    await api.post('/batches', batch);
    for (const nodeId of nodes.slice(tent * PROBES_A_TENT, (tent + 1) * PROBES_A_TENT))
      await api.post('/probes', { nodeId, address: '', chamberId: body.id, place: 'canopy' });
  }
  const screen = new AbortController();
  const stream = await fetch(`${app.url}/api/v1/stream`, { headers: { cookie: api.cookie() }, signal: screen.signal });
  const followed = stream.body?.pipeTo(new WritableStream()).catch(() => undefined);
  return {
    port: app.mqttPort ?? 0,
    api,
    stored: () => app.store.readings.countAll(),
    untilStored: (count) => until(async () => (await app.store.readings.countAll()) >= count),
    untilReady: () => until(async () => (await api.get('/health')).status === 200),
    async close() {
      screen.abort();
      await followed;
      await app.close();
      await rm(folder, { recursive: true });
    },
  };
}

async function until(isTrue: () => Promise<boolean>): Promise<void> {
  while (!(await isTrue())) await new Promise((resolve) => setTimeout(resolve, 2));
}
