// The production service on free ports and a temporary folder, closed with the test. Nothing in it is replaced but time.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pino from 'pino';
import { onTestFinished } from 'vitest';
import { type App, type AppOptions, openApp } from '../../server/app.ts';
import { systemClock } from '../../server/clock.ts';
import { readSettings } from '../../server/settings.ts';
import { type ApiClient, createApiClient } from './api-client.ts';

export interface TestApp {
  readonly app: App;
  readonly folder: string;
  /** Signed in as the first manager. */
  readonly api: ApiClient;
}

export const TEST_SETUP_CODE = 'set-up-code-of-the-tests';
export const MANAGER = { name: 'Test manager', password: 'a password for the tests' };

export interface TestAppOptions extends Partial<Omit<AppOptions, 'settings'>> {
  /** More settings, as environment variables. */
  readonly environment?: Record<string, string>;
  /** A data folder to open again; else a new one that is removed afterwards. */
  readonly folder?: string;
}

/** Opens the service; the watch goes round only when `app.tick()` is called, unless `roundMs` is given. */
export async function openTestApp(options: TestAppOptions = {}): Promise<TestApp> {
  const folder = options.folder ?? (await makeTestFolder());
  const settings = readSettings({
    TAKEWELL_DATA_DIR: folder,
    TAKEWELL_HTTP_PORT: '0',
    TAKEWELL_MQTT_PORT: '0',
    TAKEWELL_SETUP_CODE: TEST_SETUP_CODE,
    ...options.environment,
  });
  const app = await openApp({
    clock: systemClock,
    log: pino({ level: 'silent' }),
    roundMs: 0,
    allowLocalPush: true,
    ...options,
    settings,
  });
  onTestFinished(() => app.close());
  return { app, folder, api: await signInManager(app.url) };
}

/** A folder that is removed with the test. */
export async function makeTestFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'takewell-test-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return folder;
}

/** Makes the first manager, or signs in as that manager where there is one. */
export async function signInManager(url: string): Promise<ApiClient> {
  const api = createApiClient(url);
  const { body } = await api.get<{ needsSetup: boolean }>('/session');
  if (body.needsSetup) await api.post('/setup', { code: TEST_SETUP_CODE, ...MANAGER });
  else await api.post('/session', MANAGER);
  return api;
}
