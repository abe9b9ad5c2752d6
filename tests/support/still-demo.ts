// The demo with a time of its own: it goes on only when a test lets it, five seconds a step, with everything else as in `npm run demo`.
import { cpSync, mkdtempSync } from 'node:fs';
import { join } from 'node:path';
import pino from 'pino';
import { inject, onTestFinished } from 'vitest';
import { openDemoOn } from '../../server/demo/open-demo.ts';
import { pastEndMs } from '../../server/demo/replay-past.ts';
import { PAST_STEP_MS, startTents } from '../../server/demo/start-tents.ts';
import { DEMO_PASSWORD, type StoredNursery } from '../../server/demo/store-nursery.ts';
import { type StoredPast, storePast } from '../../server/demo/store-past.ts';
import { readSettings } from '../../server/settings.ts';
import type { ChamberView } from '../../shared/api/chambers.ts';
import { SECOND_MS } from '../../shared/units.ts';
import { createApiClient } from './api-client.ts';
import { makeTestFolder } from './open-test-app.ts';
import { createTestClock } from './test-clock.ts';

/** 12:00:20 at the invented nursery. */
export const DEMO_START_MS = Date.parse('2026-04-08T10:00:20Z');
export const DEMO_MANAGER = { name: 'Demo manager', password: DEMO_PASSWORD };

/** The past days are the same each time: they are judged and stored once for all tests of a process, which begin on copies. */
let madeOnce: Promise<{ readonly folder: string; readonly stored: StoredNursery }> | undefined;

async function makePast() {
  const folder = mkdtempSync(join(inject('sharedFolder'), 'demo-past-'));
  const { stored } = await storePast(folder, DEMO_START_MS);
  return { folder, stored };
}

async function copyPast(to: string): Promise<StoredPast> {
  madeOnce ??= makePast();
  const { folder, stored } = await madeOnce;
  cpSync(folder, to, { recursive: true });
  const tents = startTents(stored);
  tents.advanceTo(pastEndMs(DEMO_START_MS), PAST_STEP_MS);
  return { stored, tents };
}

/** Opens it at `DEMO_START_MS`, with a client signed in as its manager. */
export async function openStillDemo() {
  const clock = createTestClock(DEMO_START_MS);
  const free = { TAKEWELL_HTTP_PORT: '0', TAKEWELL_MQTT_PORT: '0' };
  const settings = readSettings({ ...free, TAKEWELL_DATA_DIR: await makeTestFolder() });
  const past = await copyPast(settings.dataDir);
  const demo = await openDemoOn(past, { settings, clock, log: pino({ level: 'silent' }), isRunning: false });
  onTestFinished(demo.close);
  const api = createApiClient(demo.app.url);
  await api.post('/session', DEMO_MANAGER);
  return {
    api,
    url: demo.app.url,
    mqttPort: demo.app.mqttPort,
    chambers: async () => (await api.get<{ items: ChamberView[] }>('/chambers')).body.items,
    /** The tent that overheats. */
    async hot(): Promise<ChamberView> {
      const tent = (await this.chambers()).find(({ name }) => name === 'Tent 1');
      if (tent === undefined) throw new Error('there is no Tent 1');
      return tent;
    },
    /** Lets time go on to `ms` after the start. */
    async goOnTo(ms: number): Promise<void> {
      while (clock.nowMs() < DEMO_START_MS + ms) {
        clock.advance(5 * SECOND_MS);
        await demo.goOn();
        await demo.app.tick();
      }
    },
  };
}
