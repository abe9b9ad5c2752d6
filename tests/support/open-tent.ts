// The production service with one tent in it: a chamber, a canopy probe and, if wished, a batch on its second healing day; time is the test's.

import type { AlarmView } from '../../shared/api/alarms.ts';
import type { BatchView } from '../../shared/api/batches.ts';
import type { ChamberView } from '../../shared/api/chambers.ts';
import { HOUR_MS, MINUTE_MS, SECOND_MS } from '../../shared/units.ts';
import type { ApiClient } from './api-client.ts';
import { openTestApp, type TestApp, type TestAppOptions } from './open-test-app.ts';
import { createTestClock, type TestClock } from './test-clock.ts';

/** A Sunday, noon in UTC, which is the zone of the site too. */
export const TENT_MS = Date.UTC(2026, 2, 1, 12);
/** Warns above 28 °C, critical above 29 °C. */
export const TENT_PROFILE = 'tomato-common-practice';

export interface Tent extends TestApp {
  readonly clock: TestClock;
  readonly chamberId: string;
  readonly probeId: string;
  /** Sends a reading of a probe of the node, measured now. */
  measure(temperature: number, humidity?: number, probe?: string): Promise<void>;
  /** Measures the same every ten seconds for so long, the last time at the end of it, and lets the watch go round. */
  stay(temperature: number, forMs: number, humidity?: number): Promise<void>;
  chamber(): Promise<ChamberView>;
  /** Of the tent; those of the service itself are not among them. */
  alarms(state?: string): Promise<AlarmView[]>;
  /** Closes the service and opens it again on the same folder, `afterMs` later. */
  reopen(afterMs?: number): Promise<Tent>;
}

export interface TentOptions extends Pick<TestAppOptions, 'environment' | 'sirenTrialMs'> {
  readonly startMs?: number;
  /** What is set up before it gets hot. */
  readonly before?: (tent: Tent) => Promise<void>;
}

/** Opens it; the test that calls it closes it when it ends. */
export async function openTent({ startMs = TENT_MS, ...options }: TentOptions = {}): Promise<Tent> {
  const clock = createTestClock(startMs);
  const opened = await openTestApp({ ...options, clock });
  const { api } = opened;
  const settings = { siteName: 'Test nursery', zone: 'UTC', altitudeM: 0, temperatureUnit: '°C', mappings: [] };
  await api.put('/settings', settings);
  const { body } = await api.post<{ id: string }>('/chambers', { name: 'Tent 1' });
  const probe = await api.post<{ id: string }>('/probes', { nodeId: 'n1', address: 'a', chamberId: body.id });
  return tentOn(opened, clock, body.id, probe.body.id, options);
}

/** Opens a batch in the tent that was closed `closedAgoMs` ago: on its second healing day unless said otherwise. */
export async function openBatch(tent: Tent, given: object = {}, closedAgoMs = 30 * HOUR_MS): Promise<BatchView> {
  const closedAt = new Date(tent.clock.nowMs() - closedAgoMs).toISOString();
  const wanted = { chamberId: tent.chamberId, profileId: TENT_PROFILE, code: 'T-1', plants: 1000, closedAt, ...given };
  return expectOk<BatchView>(tent.api, '/batches', wanted);
}

/** A tent with a batch whose heat alarm was told a minute after it had become too hot. */
export async function openHotTent(options: TentOptions = {}): Promise<Tent & { batch: BatchView; hot: AlarmView }> {
  const tent = await openTent(options);
  await options.before?.(tent);
  const batch = await openBatch(tent);
  await tent.stay(28.5, MINUTE_MS, 95);
  const [hot] = await tent.alarms();
  if (hot?.rule !== 'heat') throw new Error('a minute at 28.5 °C should have raised an alarm');
  return { ...tent, batch, hot };
}

async function expectOk<T>(api: ApiClient, path: string, body: object): Promise<T> {
  const answer = await api.post<T>(path, body);
  if (answer.status >= 300) throw new Error(`${path} answered ${answer.status}: ${JSON.stringify(answer.body)}`);
  return answer.body;
}

function tentOn(
  { app, api, folder }: TestApp,
  clock: TestClock,
  chamberId: string,
  probeId: string,
  options: TentOptions,
): Tent {
  const measure = async (temperature: number, humidity = 95, probe = 'a') => {
    const payload = new TextEncoder().encode(JSON.stringify({ temperature, humidity, probe }));
    const message = { topic: 'takewell/v1/n1/readings', payload, arrivalMs: clock.nowMs(), retained: false };
    await app.intake.push(message);
  };
  return {
    ...{ app, api, folder, clock, chamberId, probeId, measure },
    async stay(temperature, forMs, humidity) {
      const untilMs = clock.nowMs() + forMs;
      await measure(temperature, humidity);
      while (clock.nowMs() < untilMs) {
        clock.set(Math.min(untilMs, clock.nowMs() + 10 * SECOND_MS));
        await measure(temperature, humidity);
      }
      await app.tick();
    },
    chamber: async () => (await api.get<ChamberView>(`/chambers/${chamberId}`)).body,
    alarms: async (state = 'active') =>
      (await api.get<{ items: AlarmView[] }>(`/alarms?state=${state}&chamberId=${chamberId}`)).body.items,
    async reopen(afterMs = 0) {
      await app.close();
      clock.advance(afterMs);
      return tentOn(await openTestApp({ ...options, clock, folder }), clock, chamberId, probeId, options);
    },
  };
}
