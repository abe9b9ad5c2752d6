// The demo put together: the past in the store, the service on it, the present going on, and the crew that comes to the hot tent.
import type { Logger } from 'pino';
import { type App, openApp } from '../app.ts';
import type { Clock } from '../clock.ts';
import type { Settings } from '../settings.ts';
import type { DemoNursery } from './demo-scenario.ts';
import { connectPresent, PRESENT_STEP_MS } from './publish-present.ts';
import { createRescue } from './rescue-tent.ts';
import { type StoredPast, storePast } from './store-past.ts';

export interface DemoOptions {
  readonly settings: Settings;
  readonly clock: Clock;
  readonly log: Logger;
  /** Whether time goes on by itself; else only when `goOn` is called. */
  readonly isRunning: boolean;
}

export interface Demo {
  readonly app: App;
  readonly nursery: DemoNursery;
  /** Lets everything happen that is due by the clock. */
  goOn(): Promise<void>;
  close(): Promise<void>;
}

/** Opens the demo. Problems as `openApp`. */
export async function openDemo(options: DemoOptions): Promise<Demo> {
  return openDemoOn(await storePast(options.settings.dataDir, options.clock.nowMs()), options);
}

/** Opens it on a data folder in which its past is stored already. */
export async function openDemoOn(past: StoredPast, options: DemoOptions): Promise<Demo> {
  const { settings, clock, log, isRunning } = options;
  const startMs = clock.nowMs();
  const app = await openApp({ settings, clock, log, isDemo: true, ...(!isRunning && { roundMs: 0 }) });
  try {
    return await startPresent(app, past, startMs, options);
  } catch (error) {
    await app.close();
    throw error;
  }
}

async function startPresent(
  app: App,
  { stored, tents }: StoredPast,
  startMs: number,
  { settings, clock, log, isRunning }: DemoOptions,
): Promise<Demo> {
  // The embedded broker has a port: the demo's settings name no other broker.
  const port = app.mqttPort ?? settings.mqtt.port;
  const present = await connectPresent(stored, tents, { ...settings.mqtt, port }, log);
  const rescue = createRescue(app, stored, tents, startMs);
  const goOn = async () => {
    await rescue.look(clock.nowMs());
    await present.publish(clock.nowMs());
  };
  const stop = isRunning ? repeat(goOn, log) : async () => undefined;
  return {
    app,
    nursery: stored.nursery,
    goOn,
    async close() {
      await stop();
      await present.close();
      await app.close();
    },
  };
}

/** Runs the task at once and then every step, never twice at a time; returns how to stop. */
function repeat(task: () => Promise<void>, log: Logger): () => Promise<void> {
  let running: Promise<void> | null = null;
  const run = () => {
    running ??= task()
      .catch((error: unknown) => log.error({ err: error }, 'the simulated nursery stumbled'))
      .finally(() => {
        running = null;
      });
  };
  run();
  const timer = setInterval(run, PRESENT_STEP_MS);
  return async () => {
    clearInterval(timer);
    await running;
  };
}
